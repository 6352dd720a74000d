namespace Toepan.Domain.Programme;

/// <summary>What is known of a run when somebody decides about repeating it.</summary>
/// <param name="Valid">Whether its conduct holds.</param>
/// <param name="RepeatedBy">Test codes of runs, made or planned, that already repeat it.</param>
public sealed record RepeatSituation(bool Valid, IReadOnlyList<string> RepeatedBy);

/// <summary>When a run may be repeated. Design, "Words": a repeat never replaces a valid run because of its result.</summary>
public static class RepeatRules
{
    /// <summary>Null where the decision may be recorded, else the reason why not, in a sentence.</summary>
    public static string? Refusal(RepeatTrigger trigger, RepeatChoice choice, RepeatSituation run) => (trigger, choice) switch
    {
        _ when run.RepeatedBy.Count > 0 =>
            $"{string.Join(", ", run.RepeatedBy)} repeats it already: a decision is recorded before it is acted on.",
        (RepeatTrigger.ResultDoubted, RepeatChoice.Repeat) when run.Valid =>
            "The run is valid: a repeat never replaces a valid run because of its result. Doubts are answered by review of its channels and points.",
        (RepeatTrigger.ResultDoubted, RepeatChoice.Repeat) =>
            "A doubted result is no ground for a repeat. Where the conduct is outside its bounds, name that as the trigger.",
        (RepeatTrigger.ConductOutside, _) when run.Valid =>
            "Every conduct item of the run holds, so conduct cannot be the trigger.",
        _ => null,
    };

    /// <summary>What a repeat by this decision means for the rating, in a sentence.</summary>
    public static string Consequence(RepeatChoice choice, bool valid) => (choice, valid) switch
    {
        (RepeatChoice.Leave, true) => "The run stands and rates the vehicle.",
        (RepeatChoice.Leave, false) => "The run stays not valid and rates nothing.",
        (RepeatChoice.Repeat, true) => "The run stays valid. Both runs are published and the lower one rates the vehicle.",
        _ => "The first valid run will rate the vehicle; this one is shown beside it as not valid.",
    };
}
