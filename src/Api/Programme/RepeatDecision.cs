using Toepan.Api.Programme.Tables;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>Somebody who had opened a run's measures or rating, and when first.</summary>
public sealed record SeenBy(string Who, DateTimeOffset FirstAt);

/// <summary>A decision to record.</summary>
/// <param name="Trigger">Why a repeat is considered.</param>
/// <param name="Choice">Repeat, or leave the run as it stands.</param>
/// <param name="Evidence">What shows it.</param>
/// <param name="Options">What else was considered.</param>
/// <param name="MeasuresSeen">Whether the person who decides has seen any of the run's measures.</param>
public sealed record NewRepeatDecision(RepeatTrigger Trigger, RepeatChoice Choice, string Evidence, string Options, bool MeasuresSeen);

/// <summary>A recorded decision.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Trigger">Why a repeat was considered.</param>
/// <param name="Choice">What was decided.</param>
/// <param name="Evidence">What showed it.</param>
/// <param name="Options">What else was considered.</param>
/// <param name="Valid">Whether the run was valid then.</param>
/// <param name="Consequence">What follows for the rating.</param>
/// <param name="MeasuresSeen">Whether the person said to have seen measures, or is recorded to have opened them.</param>
/// <param name="SeenBy">Everybody recorded to have opened them by then.</param>
/// <param name="DecidedBy">Who decided.</param>
/// <param name="DecidedAt">When.</param>
public sealed record RepeatDecision(
    long Id, RepeatTrigger Trigger, RepeatChoice Choice, string Evidence, string Options, bool Valid, string Consequence, bool MeasuresSeen,
    IReadOnlyList<SeenBy> SeenBy, string DecidedBy, DateTimeOffset DecidedAt)
{
    internal static RepeatDecision Of(RepeatDecisionRow row)
    {
        var seen = StoredJson.Read<SeenBy[]>(row.SeenBy);
        return new(
            row.Id, row.Trigger, row.Choice, row.Evidence, row.Options, row.Valid, RepeatRules.Consequence(row.Choice, row.Valid),
            row.SaidSeen || seen.Any(one => one.Who == row.DecidedBy), seen, row.DecidedBy, row.DecidedAt);
    }
}
