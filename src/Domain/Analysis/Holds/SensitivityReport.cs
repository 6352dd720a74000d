using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Holds;

/// <summary>A move of one figure that changes the overall level, all others kept.</summary>
/// <param name="To">The bound of the change: the overall level is <paramref name="Level"/> just beyond it.</param>
/// <param name="Change">To minus the run's value.</param>
/// <param name="Share">Change over the run's value; null where that is zero.</param>
/// <param name="Deviates">Change in standard deviations of its scatter between runs; null where that is not known.</param>
/// <param name="Level">The level it leads to.</param>
public sealed record LevelMove(double To, double Change, double? Share, double? Deviates, ProtectionLevel Level);

/// <summary>One bar pair of the tornado: how far a figure would have to move to make the overall level worse or better.</summary>
/// <param name="ToWorse">Null where no value of this figure alone makes it worse.</param>
/// <param name="ToBetter">Null where no value of this figure alone makes it better.</param>
/// <param name="ChanceAlone">Chance that this figure's scatter alone changes the overall level; null where the scatter is not known.</param>
public sealed record SensitivityRow(LevelInput Input, LevelMove? ToWorse, LevelMove? ToBetter, double? ChanceAlone);

/// <summary>
/// What the impact speed can explain. The assumption is generous and has no source: every load and displacement is proportional to the impact energy.
/// </summary>
/// <param name="SpeedKmh">Impact speed.</param>
/// <param name="NominalKmh">Nominal speed of the procedure.</param>
/// <param name="EnergyRatio">(v/v nominal)².</param>
/// <param name="AtNominal">Overall level were every load divided by the energy ratio.</param>
/// <param name="SpeedForBetterKmh">Impact speed from which on over-speed alone could explain that the level is not better; null where no speed could.</param>
public sealed record SpeedExplanation(double SpeedKmh, double NominalKmh, double EnergyRatio, ProtectionLevel AtNominal, double? SpeedForBetterKmh);

/// <summary>How far each figure would have to move to change the overall level.</summary>
/// <param name="Overall">The run's overall level; null = not rated, and then there are no rows.</param>
/// <param name="NotRated">Why not, or null.</param>
/// <param name="Rows">Figures that alone can change it, the one most likely to first.</param>
/// <param name="Fixed">Codes of figures that alone cannot change it, whatever their value.</param>
/// <param name="Speed">What the speed can explain; null without level or speed.</param>
public sealed record SensitivityReport(
    ProtectionLevel? Overall, string? NotRated, IReadOnlyList<SensitivityRow> Rows, IReadOnlyList<string> Fixed, SpeedExplanation? Speed)
{
    /// <summary>The figure most likely to change the overall level by itself; null where none does so in one of as many runs as are drawn.</summary>
    public SensitivityRow? MostLikely => Rows.FirstOrDefault(row => row.ChanceAlone * LevelHolds.Draws >= 1);
}
