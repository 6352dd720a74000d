using Toepan.Domain.Measures;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Holds;

/// <summary>
/// The chance that each region and the overall level hold in a repeated run: 10 000 seeded draws of every figure about the run's own, once each
/// for itself and once all by the same deviate. The draws of one figure are stratified (one in each ten-thousandth of its distribution, in seeded order),
/// so that a region that depends on one figure agrees with the closed form. Methods edition 1, "Repeats".
/// Source of the sampling: M. D. McKay, R. J. Beckman and W. J. Conover, Technometrics 21 (1979).
/// </summary>
public static class LevelHolds
{
    public const int Draws = 10_000;
    public const int Seed = 1;

    // One deviate in the middle of each of equally likely strata, in rising order.
    private static readonly double[] Strata = [.. Enumerable.Range(0, Draws).Select(k => StandardNormal.Quantile((k + 0.5) / Draws))];

    /// <param name="vehicleCost">Cost of a vehicle, any currency; null = not given.</param>
    public static HoldReport Of(Scheme scheme, LevelModel model, double? vehicleCost = null)
    {
        var values = model.Values.ToArray();
        var levels = new ProtectionLevel[model.Regions.Count];
        var overall = model.At(values, levels);
        var independent = Count(model, Independent(model), levels);
        var correlated = Count(model, [.. model.Inputs.Select(_ => Strata)], levels);
        var chances = overall is null ? [] : Enum.GetValues<ProtectionLevel>().Select(level => new LevelChance(level, Chances(independent.Overall, correlated.Overall, (int)level))).ToList();
        return new(
            scheme.Key, Draws, Seed, overall, model.NotRated, overall is { } held ? chances[(int)held].Chance : null, chances,
            [.. model.Regions.Select((region, i) => new RegionHold(
                region.Region, region.Position, region.NotRated is null ? levels[i] : null, region.NotRated,
                region.NotRated is null ? Chances(independent.Regions, correlated.Regions, i) : null))],
            overall is { } rated ? Worth(chances, rated, vehicleCost) : null,
            [.. model.Inputs.Where(input => input.Scatter is null).Select(input => input.Code).Distinct()]);
    }

    private static double[][] Independent(LevelModel model)
    {
        var random = new Random(Seed);
        return
        [
            .. model.Inputs.Select(_ =>
            {
                var order = (double[])Strata.Clone();
                random.Shuffle(order);
                return order;
            }),
        ];
    }

    private static (int[] Overall, int[] Regions) Count(LevelModel model, double[][] deviates, ProtectionLevel[] held)
    {
        var (overall, regions) = (new int[LevelWords.Steps], new int[held.Length]);
        var (figures, levels) = (new double[model.Inputs.Count], new ProtectionLevel[held.Length]);
        for (var draw = 0; draw < Draws; draw++)
        {
            for (var i = 0; i < figures.Length; i++)
            {
                figures[i] = model.Inputs[i].At(deviates[i][draw]);
            }

            if (model.At(figures, levels) is { } level)
            {
                overall[(int)level]++;
            }

            for (var i = 0; i < levels.Length; i++)
            {
                regions[i] += levels[i] == held[i] ? 1 : 0;
            }
        }

        return (overall, regions);
    }

    private static TwoChances Chances(int[] independent, int[] correlated, int index) =>
        new((double)independent[index] / Draws, (double)correlated[index] / Draws);

    private static RepeatWorth Worth(List<LevelChance> chances, ProtectionLevel rated, double? vehicleCost)
    {
        var (worse, better) = (Sum(chance => chance.Level > rated), Sum(chance => chance.Level < rated));
        return new(worse, better, vehicleCost, worse.Independent > 0 ? Digits.Round12(vehicleCost / worse.Independent) : null);

        TwoChances Sum(Func<LevelChance, bool> counts) => new(
            Digits.Round12(chances.Where(counts).Sum(chance => chance.Chance.Independent)), Digits.Round12(chances.Where(counts).Sum(chance => chance.Chance.Correlated)));
    }
}
