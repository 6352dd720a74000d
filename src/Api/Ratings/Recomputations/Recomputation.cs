using Toepan.Api.Ratings.Tables;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>Where a recomputation stands.</summary>
public enum RecomputationState
{
    Running,
    Stopped,
    Finished,
}

/// <summary>Work on many runs and how far it is.</summary>
/// <param name="Id">Number.</param>
/// <param name="Kind">Ratings by a scheme, or reductions by a method edition.</param>
/// <param name="Scheme">Scheme it rates by.</param>
/// <param name="MethodEdition">Method edition it reduces by.</param>
/// <param name="Reason">Reason given.</param>
/// <param name="At">When it began.</param>
/// <param name="By">Who began it.</param>
/// <param name="State">Where it stands.</param>
/// <param name="Runs">Runs it covers.</param>
/// <param name="Done">Runs done.</param>
/// <param name="Released">Of those, runs whose released rating stays.</param>
/// <param name="Failed">Of those, runs that could not be computed.</param>
/// <param name="EndedAt">When it finished, or null.</param>
public sealed record Recomputation(
    long Id, RecomputationKind Kind, string Scheme, string MethodEdition, string Reason, DateTimeOffset At, string By, RecomputationState State,
    int Runs, int Done, int Released, int Failed, DateTimeOffset? EndedAt);

/// <summary>One run of a recomputation whose overall level came out otherwise, or which failed.</summary>
public sealed record RecomputedRun(string Test, StepOutcome Outcome, ProtectionLevel? Before, ProtectionLevel? After, string? Note);

/// <summary>A recomputation with the runs it changed.</summary>
public sealed record RecomputationDetail(Recomputation Summary, IReadOnlyList<RecomputedRun> Changed);
