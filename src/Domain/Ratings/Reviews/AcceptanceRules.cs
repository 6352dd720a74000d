using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings.Reviews;

/// <summary>When a run that is not valid may be accepted with a reason. Methods edition 1, "Conduct".</summary>
public static class AcceptanceRules
{
    /// <summary>
    /// Null where a reviewer may accept the run, else the reason why not. Over-speed only when the overall is high (more energy than asked for
    /// and still the best level); under-speed never; a speed nobody knows could be either, so never.
    /// </summary>
    public static string? Refusal(ConductJudgement conduct, ProtectionLevel? overall)
    {
        if (conduct.Valid)
        {
            return "Every conduct item holds: there is nothing to accept.";
        }

        var speed = conduct.Items.FirstOrDefault(item => item.Item == ConductItems.ImpactSpeed);
        return speed switch
        {
            { Fails: false } => null,
            null or { Verdict: Verdict.NotRecorded } => "The impact speed is not recorded, so under-speed cannot be excluded: the run cannot be accepted.",
            _ when speed.Reading < speed.Lower => "The run was too slow: under-speed is never accepted.",
            _ when overall != ProtectionLevel.High =>
                $"The run was too fast: over-speed is accepted only when the overall level is high; here it is {overall?.Word() ?? "not rated"}.",
            _ => null,
        };
    }
}
