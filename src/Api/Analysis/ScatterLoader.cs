using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis;

/// <summary>The programme's own scatter between runs: valid runs of one vehicle by one procedure, seat by seat with the same dummy.</summary>
internal static class ScatterLoader
{
    public static async Task<ScatterTable> Load(ProgrammeDb context, Scheme scheme, CancellationToken cancellation)
    {
        var all = context.Set<TestRunRow>();
        var repeated = all.Where(run => all.Count(other => other.VehicleKey == run.VehicleKey && other.Procedure == run.Procedure) > 1);
        var runs = (await RunIndex.Load(context, repeated, cancellation)).Where(run => run.Valid).ToList();
        var values = await Values(context, [.. runs.Select(run => run.Test)], [.. Codes(scheme)], cancellation);
        var groups =
            from run in runs
            from value in values[run.Test]
            let dummy = run.Occupants.FirstOrDefault(occupant => occupant.Position == value.Position)?.Dummy
            group value.Value!.Value by (Key: $"{run.Vehicle.Key} {run.Procedure}", value.Code, value.Position, dummy) into repeats
            where repeats.Count() > 1
            select new RepeatGroup(repeats.Key.Key, repeats.Key.Code, [.. repeats]);
        return ScatterTable.Of(scheme, groups);
    }

    private static async Task<ILookup<string, MeasuredValue>> Values(
        ProgrammeDb context, List<string> tests, List<string> codes, CancellationToken cancellation)
    {
        var current = context.Set<CurrentRatingRow>()
            .Where(row => tests.Contains(row.Test) && !context.Set<CurrentRatingRow>().Any(later => later.Test == row.Test && later.Id > row.Id))
            .Select(row => new { row.Test, row.Rating!.ReductionId });
        var values = await current
            .Join(
                context.Set<MeasureRow>().Where(row => row.Value != null && codes.Contains(row.Code)),
                run => run.ReductionId, row => row.ReductionId,
                (run, row) => new MeasuredValue(run.Test, row.Ordinal, row.Code, row.Position, row.Value, row.Unit))
            .ToListAsync(cancellation);
        return values.ToLookup(value => value.Test);
    }

    private static IEnumerable<string> Codes(Scheme scheme) => scheme.Regions
        .SelectMany(rule => rule.Limits.Select(limit => limit.Measure)
            .Concat(rule.Measures.Select(rated => rated.Measure))
            .Concat(rule.Risk is { } risk ? risk.Curves.Select(curve => curve.Load).Append(risk.Measure) : []))
        .Concat(scheme.Structure.Measures.Select(rated => rated.Measure))
        .Distinct();
}
