using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis.Classes;

/// <summary>A vehicle class side by side: values, places among vehicles of similar mass, what decided each level, limits and the repeat band.</summary>
public sealed class ClassComparisonService(IDbContextFactory<ProgrammeDb> contexts, ClassMeasureService measures, ProgrammeRules rules)
{
    private const double BandDeviates = 1.959963984540054; // Φ⁻¹(0.975)

    /// <summary>The comparison; a vehicle to pick out that has no row is left out of the question.</summary>
    public async Task<Outcome<ClassComparison>> Get(Viewer viewer, string vehicleClass, ClassComparisonQuery query, CancellationToken cancellation = default)
    {
        if (query.Sort is { } sort && !query.Measures.Measures.Contains(sort))
        {
            return Failure.BadRequest($"sort is '{sort}', which is none of the measures asked for.");
        }

        var outcome = await measures.Get(viewer, vehicleClass, query.Measures, cancellation);
        if (outcome.Value is not { } table)
        {
            return outcome.Failure!;
        }

        query = query with { Pick = table.Rows.Any(row => row.Vehicle.Key == query.Pick) ? query.Pick : null };
        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var standings = await Standings(context, table, cancellation);
        var (rows, ranked, ratio) = ComparisonRows.Of(table, query, standings);
        var scatter = query.Pick is null ? null : await ScatterLoader.Load(context, rules.DefaultScheme, cancellation);
        var picked = query.Pick is null ? null : rows.FirstOrDefault(row => row.Row.Vehicle.Key == query.Pick);
        return new ClassComparison(
            table, query, rows, [.. table.Statistics.Select((statistics, i) => new ComparedMeasure(statistics, Limits(statistics.Measure), Band(scatter?.Find(statistics.Measure), picked?.Row.Values[i])))],
            ranked, ratio);
    }

    private static async Task<IReadOnlyDictionary<string, RunStanding>> Standings(ProgrammeDb context, ClassMeasures table, CancellationToken cancellation)
    {
        var tests = table.Rows.Where(row => row.Kind == ResultKind.Run).Select(row => row.Test).Distinct().ToList();
        var rows = await context.Set<CurrentRatingRow>().AsNoTracking()
            .Where(current => tests.Contains(current.Test) && !context.Set<CurrentRatingRow>().Any(later => later.Test == current.Test && later.Id > current.Id))
            .Select(current => new { current.Test, current.Rating!.Document })
            .ToListAsync(cancellation);
        return rows.ToDictionary(row => row.Test, row =>
        {
            var rating = StoredJson.Read<Rating>(row.Document);
            return new RunStanding(rating.Overall, DecidingMeasure.Of(rating));
        });
    }

    // Where 95 of 100 repeated runs would be expected.
    private static MeasureBand? Band(Scatter? scatter, double? value) =>
        scatter is not null && value is { } middle ? new(scatter.At(middle, -BandDeviates), scatter.At(middle, BandDeviates)) : null;

    private List<ComparedLimit> Limits(string code)
    {
        var scheme = rules.DefaultScheme;
        var limits = scheme.Regions.SelectMany(region => region.Limits.Where(limit => limit.Measure == code)
            .Select(limit => new ComparedLimit(limit.Limit, $"limit {region.Dummy}")));
        var bounds = scheme.Structure.Measures.Where(rated => rated.Measure == code)
            .SelectMany(rated => new[] { new ComparedLimit(rated.Bounds.High, "high"), new ComparedLimit(rated.Bounds.Moderate, "moderate"), new ComparedLimit(rated.Bounds.Low, "low") });
        return [.. limits.GroupBy(limit => limit.Value).Select(group => group.Count() > 1 ? group.First() with { Label = "limit" } : group.First()).Concat(bounds)];
    }
}
