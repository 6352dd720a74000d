using Toepan.Domain.Ratings;
using Toepan.Domain.Ratings.Steps;

namespace Toepan.Domain.Analysis.Holds;

/// <summary>The overall level from final levels and excess risks of the regions, by the same steps as the rater.</summary>
internal sealed class OverallModel
{
    private const double TwelfthDigit = 1 - 5e-13;

    private readonly Scheme scheme;
    private readonly int[] own;
    private readonly int structure;
    private readonly ProtectionLevel capAtBest;
    private readonly PartModel life;
    private readonly PartModel? legs;

    /// <param name="regions">Every region of the run; the structure among them.</param>
    /// <param name="own">Indices of the rated occupant's regions.</param>
    /// <param name="structure">Index of the structure.</param>
    public OverallModel(
        Scheme scheme, PartRule life, PartRule? legs, IReadOnlyList<RegionModel> regions, int[] own, int structure, ProtectionLevel capAtBest)
    {
        (this.scheme, this.own, this.structure, this.capAtBest) = (scheme, own, structure, capAtBest);
        this.life = Model(life);
        this.legs = legs is null ? null : Model(legs);

        PartModel Model(PartRule rule) => new(
            rule.Joint?.Bounds, [.. (rule.Joint?.Groups ?? []).Select(Indices)], Indices(rule.WorstOf));

        int[] Indices(IReadOnlyList<string> named) => [.. named.Select(region => own.First(index => regions[index].Region == region))];
    }

    public ProtectionLevel At(ReadOnlySpan<RegionOutcome> regions)
    {
        var worst = Worst(own, regions);
        var lifeLevel = Level(life, regions);
        var legsLevel = legs is null ? lifeLevel : Level(legs, regions);
        return OverallStep.Of(scheme, lifeLevel, legsLevel, worst, regions[structure].Level, capAtBest).Final;
    }

    private static ProtectionLevel Level(PartModel part, ReadOnlySpan<RegionOutcome> regions) => ProtectionLevels.Worse(
        part.Bounds?.Of(Joint(part.Groups, regions) * TwelfthDigit) ?? ProtectionLevel.High, Worst(part.WorstOf, regions));

    private static double Joint(int[][] groups, ReadOnlySpan<RegionOutcome> regions)
    {
        var none = 1.0;
        foreach (var group in groups)
        {
            var largest = 0.0;
            foreach (var index in group)
            {
                largest = Math.Max(largest, regions[index].Excess);
            }

            none *= 1 - largest;
        }

        return 1 - none;
    }

    private static ProtectionLevel Worst(int[] group, ReadOnlySpan<RegionOutcome> regions)
    {
        var worst = ProtectionLevel.High;
        foreach (var index in group)
        {
            worst = ProtectionLevels.Worse(worst, regions[index].Level);
        }

        return worst;
    }

    private sealed record PartModel(LevelBounds? Bounds, int[][] Groups, int[] WorstOf);
}
