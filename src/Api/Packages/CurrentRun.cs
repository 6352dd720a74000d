using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Measures;

namespace Toepan.Api.Packages;

/// <summary>What is current for a run: pointer, rating, reduction, package.</summary>
internal sealed record CurrentRun(long PointerId, string Test, long RatingId, long ReductionId, string PackageSha256)
{
    /// <summary>The current facts of a test code, or null where there is no such run.</summary>
    public static Task<CurrentRun?> Find(ProgrammeDb context, string test, CancellationToken cancellation) =>
        context.Set<CurrentRatingRow>().AsNoTracking()
            .Where(current => current.Test == test)
            .OrderByDescending(current => current.Id)
            .Select(current => new CurrentRun(
                current.Id, current.Test, current.RatingId, current.Rating!.ReductionId, current.Rating.Reduction!.PackageSha256))
            .FirstOrDefaultAsync(cancellation);

    /// <summary>A stored reduction without its measures.</summary>
    public static async Task<Reduction> ReadReduction(ProgrammeDb context, long reduction, CancellationToken cancellation) =>
        StoredJson.Read<Reduction>(await context.Set<ReductionRow>()
            .Where(row => row.Id == reduction).Select(row => row.Document).SingleAsync(cancellation));

    /// <summary>The measures of a stored reduction, in the reducer's order.</summary>
    public static async Task<List<Measure>> ReadMeasures(ProgrammeDb context, long reduction, CancellationToken cancellation)
    {
        var rows = await context.Set<MeasureRow>().AsNoTracking()
            .Where(row => row.ReductionId == reduction).OrderBy(row => row.Ordinal).ToListAsync(cancellation);
        return rows.ConvertAll(row => row.ToMeasure());
    }
}
