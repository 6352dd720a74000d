using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis;

/// <summary>
/// The programme's own scatter between runs: valid runs of one vehicle by one procedure, seat by seat with the same dummy. A value whose channel was at its
/// stop or seems to have the wrong sign is left out: that is a fault and no scatter.
/// </summary>
internal static class ScatterLoader
{
    private static readonly string[] Faults = ["channel.clipped", "channel.polarity"];

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

    private static async Task<ILookup<string, SourcedValue>> Values(
        ProgrammeDb context, List<string> tests, List<string> codes, CancellationToken cancellation)
    {
        var current = context.Set<CurrentRatingRow>()
            .Where(row => tests.Contains(row.Test) && !context.Set<CurrentRatingRow>().Any(later => later.Test == row.Test && later.Id > row.Id))
            .Select(row => new { row.Test, row.Rating!.ReductionId });
        var values = await current
            .Join(
                context.Set<MeasureRow>().Where(row => row.Value != null && codes.Contains(row.Code)),
                run => run.ReductionId, row => row.ReductionId,
                (run, row) => new SourcedValue(run.Test, run.ReductionId, row.Code, row.Position, row.Value, row.Sources))
            .ToListAsync(cancellation);
        var faulty = await Faulty(context, [.. values.Select(value => value.Reduction).Distinct()], cancellation);
        return values.Where(value => !value.Sources.Any(source => faulty.Contains((value.Reduction, source)))).ToLookup(value => value.Test);
    }

    private static async Task<HashSet<(long Reduction, string Channel)>> Faulty(ProgrammeDb context, long[] reductions, CancellationToken cancellation)
    {
        var rows = await context.Database.SqlQuery<FaultyChannel>(
            $"""
            SELECT r.id AS reduction, c ->> 'channel' AS channel
            FROM lab.reduction r CROSS JOIN LATERAL jsonb_array_elements(r.document -> 'channels') c
            WHERE r.id = ANY ({reductions})
              AND EXISTS (SELECT 1 FROM jsonb_array_elements(c -> 'problems') p WHERE p ->> 'code' = ANY ({Faults}))
            """).ToListAsync(cancellation);
        return [.. rows.Select(row => (row.Reduction, row.Channel))];
    }

    private static IEnumerable<string> Codes(Scheme scheme) => scheme.Regions
        .SelectMany(rule => rule.Limits.Select(limit => limit.Measure)
            .Concat(rule.Measures.Select(rated => rated.Measure))
            .Concat(rule.Risk is { } risk ? risk.Curves.Select(curve => curve.Load).Append(risk.Measure) : []))
        .Concat(scheme.Structure.Measures.Select(rated => rated.Measure))
        .Distinct();
}

/// <summary>A stored value with the channels or points it was reduced from.</summary>
internal sealed record SourcedValue(string Test, long Reduction, string Code, int? Position, double? Value, string[] Sources);

/// <summary>A channel of a reduction that shows a fault.</summary>
internal sealed record FaultyChannel(long Reduction, string Channel);
