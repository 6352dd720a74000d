using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Measures;
using Toepan.Domain.Programme;

namespace Toepan.Api.Analysis;

/// <summary>Measures across a vehicle class.</summary>
public sealed class ClassMeasureService(IDbContextFactory<ProgrammeDb> contexts)
{
    /// <summary>The valid runs of the class, or all of them, and statistics over the rows given.</summary>
    public async Task<Outcome<ClassMeasures>> Get(
        Viewer viewer, string vehicleClass, ClassMeasureQuery query, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        if (Check(query) is { } invalid)
        {
            return invalid;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var known = await context.Set<VehicleClassRow>().AsNoTracking().SingleOrDefaultAsync(row => row.Key == vehicleClass, cancellation);
        if (known is null)
        {
            return Failure.NotFound("vehicle class", vehicleClass);
        }

        var runs = await RunIndex.Load(
            context,
            context.Set<TestRunRow>().Where(run => run.Vehicle!.ClassKey == vehicleClass && (query.Procedure == null || run.Procedure == query.Procedure)),
            cancellation);
        runs = query.Runs switch
        {
            "all" => runs,
            "rating" => Rating(runs),
            _ => [.. runs.Where(run => run.Valid)],
        };

        var values = await Values(context, [.. runs.Select(run => run.Test)], query.Measures, cancellation);
        return ClassMeasureTable.Build(known.Key, known.Title, query, runs, values);
    }

    // The run that rates each vehicle: the first valid one, or a later valid one that came out lower.
    private static List<TestRunSummary> Rating(IReadOnlyList<TestRunSummary> runs) =>
    [
        .. runs.GroupBy(run => run.Vehicle.Key).SelectMany(vehicle =>
            RatingRuns.Of(vehicle.Select(run => new RatingRun(run.Test, run.Date, run.Valid, (int?)run.Overall))) is { } test ? vehicle.Where(run => run.Test == test) : []),
    ];

    private static Failure? Check(ClassMeasureQuery query)
    {
        if (!ClassMeasureQuery.Seats.Contains(query.Seat))
        {
            return Failure.BadRequest($"seat is '{query.Seat}'; it is one of {string.Join(", ", ClassMeasureQuery.Seats)}.");
        }

        if (!ClassMeasureQuery.RunChoices.Contains(query.Runs))
        {
            return Failure.BadRequest($"runs is '{query.Runs}'; it is one of {string.Join(", ", ClassMeasureQuery.RunChoices)}.");
        }

        return query.Measures.FirstOrDefault(code => MeasureCatalogue.Find(code) is null) is { } unknown
            ? Failure.BadRequest($"measure is '{unknown}', which methods edition {MethodEdition.Current} does not have.")
            : null;
    }

    private static async Task<List<MeasuredValue>> Values(
        ProgrammeDb context, List<string> tests, IReadOnlyList<string> codes, CancellationToken cancellation)
    {
        var current = context.Set<CurrentRatingRow>()
            .Where(row => tests.Contains(row.Test) && !context.Set<CurrentRatingRow>().Any(later => later.Test == row.Test && later.Id > row.Id))
            .Select(row => new { row.Test, row.Rating!.ReductionId });
        var wanted = codes.ToList();
        return await current
            .Join(
                context.Set<MeasureRow>().Where(row => wanted.Count == 0 || wanted.Contains(row.Code)),
                run => run.ReductionId, row => row.ReductionId,
                (run, row) => new MeasuredValue(run.Test, row.Ordinal, row.Code, row.Position, row.Value, row.Unit))
            .ToListAsync(cancellation);
    }
}

/// <summary>A stored value of a run's current reduction.</summary>
internal sealed record MeasuredValue(string Test, int Ordinal, string Code, int? Position, double? Value, string Unit);
