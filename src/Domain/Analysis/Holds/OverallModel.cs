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
    private readonly int[][] life;
    private readonly int[][] legs;
    private readonly LegsRule legsRule;

    /// <param name="regions">Every region of the run; the structure among them.</param>
    /// <param name="own">Indices of the rated occupant's regions.</param>
    /// <param name="structure">Index of the structure.</param>
    public OverallModel(Scheme scheme, LegsRule legsRule, IReadOnlyList<RegionModel> regions, int[] own, int structure, ProtectionLevel capAtBest)
    {
        (this.scheme, this.legsRule, this.own, this.structure, this.capAtBest) = (scheme, legsRule, own, structure, capAtBest);
        life = Indices(scheme.Overall.Life.Groups);
        legs = Indices(legsRule.Joint?.Groups ?? [legsRule.WorstOf]);

        int[][] Indices(IReadOnlyList<IReadOnlyList<string>> groups) =>
            [.. groups.Select(group => group.Select(region => own.First(index => regions[index].Region == region)).ToArray())];
    }

    public ProtectionLevel At(ReadOnlySpan<RegionOutcome> regions)
    {
        var worst = ProtectionLevel.High;
        foreach (var index in own)
        {
            worst = ProtectionLevels.Worse(worst, regions[index].Level);
        }

        var legsLevel = legsRule.Joint is { } joint ? joint.Bounds.Of(Joint(legs, regions) * TwelfthDigit) : Worst(legs[0], regions);
        return OverallStep.Of(
            scheme, scheme.Overall.Life.Bounds.Of(Joint(life, regions) * TwelfthDigit), legsLevel, worst, regions[structure].Level, capAtBest).Final;
    }

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
}
