using Toepan.Api.Store;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Ratings.Reviews;

/// <summary>Corrections that are due: what failed after a run was made public. Asked by whatever makes runs public.</summary>
internal static class CorrectionIndex
{
    /// <summary>Every correction due, oldest first.</summary>
    /// <param name="publicSince">Test codes of public runs and since when what is public now has been.</param>
    public static async Task<IReadOnlyList<CorrectionDue>> Load(
        ProgrammeDb context, IReadOnlyDictionary<string, DateTimeOffset> publicSince, CancellationToken cancellation)
    {
        var reviews = await ReviewIndex.Load(context, [.. publicSince.Keys], cancellation);
        return
        [
            .. reviews.Values
                .SelectMany(review => CorrectionRules.Of(review.Test, review.Standing(DateTimeOffset.MaxValue).OpenConcerns, publicSince[review.Test]))
                .OrderBy(due => due.Since).ThenBy(due => due.Test, StringComparer.Ordinal),
        ];
    }
}
