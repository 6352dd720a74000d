using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

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
        if (query.Runs != "all")
        {
            runs = [.. runs.Where(run => run.Valid)];
        }

        var values = await Values(context, [.. runs.Select(run => run.Test)], query.Measures, cancellation);
        if (await UnknownMeasure(context, query.Measures, values, cancellation) is { } unknown)
        {
            return Failure.BadRequest($"measure is '{unknown}', which no reduction has.");
        }

        return ClassMeasureTable.Build(known.Key, known.Title, query, runs, values);
    }

    private static Failure? Check(ClassMeasureQuery query)
    {
        if (!ClassMeasureQuery.Seats.Contains(query.Seat))
        {
            return Failure.BadRequest($"seat is '{query.Seat}'; it is one of {string.Join(", ", ClassMeasureQuery.Seats)}.");
        }

        return ClassMeasureQuery.RunChoices.Contains(query.Runs)
            ? null
            : Failure.BadRequest($"runs is '{query.Runs}'; it is one of {string.Join(", ", ClassMeasureQuery.RunChoices)}.");
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

    // A code that no run of this class has may still be one that another class has.
    private static async Task<string?> UnknownMeasure(
        ProgrammeDb context, IReadOnlyList<string> codes, List<MeasuredValue> values, CancellationToken cancellation)
    {
        var present = values.Select(value => value.Code).ToHashSet();
        foreach (var code in codes.Where(code => !present.Contains(code)))
        {
            if (!await context.Set<MeasureRow>().AnyAsync(row => row.Code == code, cancellation))
            {
                return code;
            }
        }

        return null;
    }
}

/// <summary>A stored value of a run's current reduction.</summary>
internal sealed record MeasuredValue(string Test, int Ordinal, string Code, int? Position, double? Value, string Unit);
