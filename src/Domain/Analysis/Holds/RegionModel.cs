using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Holds;

/// <summary>The final level and the excess risk of a region; excess 0 where it is rated on measures.</summary>
internal readonly record struct RegionOutcome(ProtectionLevel Level, double Excess);

/// <summary>
/// One region of one run as arithmetic on the run's figures, without words: what <see cref="Rater"/> says of the same figures, fast enough for thousands of
/// draws. Figures are not rounded to 12 digits on the way; half of the twelfth digit is allowed at each bound instead.
/// </summary>
internal sealed class RegionModel
{
    private const double TwelfthDigit = 1 - 5e-13;

    public required string Region { get; init; }
    public required int? Position { get; init; }

    /// <summary>Why it has no level whatever the figures are, or null.</summary>
    public required string? NotRated { get; init; }

    /// <summary>What findings, and limits certainly exceeded by figures only known from below, leave at best.</summary>
    public ProtectionLevel AtBest { get; init; } = ProtectionLevel.High;

    /// <summary>Risk by curves of loads: the largest counts.</summary>
    public IReadOnlyList<(int Input, RiskCurve Curve)> Curves { get; init; } = [];

    /// <summary>A risk that is a figure itself; null with <see cref="Curves"/>.</summary>
    public int? Risk { get; init; }

    /// <summary>Largest risk of the curves at no load.</summary>
    public double RiskAtZero { get; init; }

    public LevelBounds? RiskBounds { get; init; }
    public IReadOnlyList<(int Input, LevelBounds Bounds)> Measures { get; init; } = [];
    public IReadOnlyList<(int Input, double Limit, ProtectionLevel AtBest)> Limits { get; init; } = [];

    /// <summary>The region at these figures; meaningless where it is not rated.</summary>
    public RegionOutcome At(ReadOnlySpan<double> figures)
    {
        var (level, excess) = RiskBounds is null ? (ByMeasures(figures), 0) : ByRisk(figures);
        foreach (var (input, limit, atBest) in Limits)
        {
            level = figures[input] > limit ? ProtectionLevels.Worse(level, atBest) : level;
        }

        return new(ProtectionLevels.Worse(level, AtBest), excess);
    }

    /// <summary>The risk at these figures: the largest of the curves, or the figure itself.</summary>
    public double RiskAt(ReadOnlySpan<double> figures)
    {
        var risk = Risk is { } given ? figures[given] : 0;
        foreach (var (input, curve) in Curves)
        {
            risk = Math.Max(risk, curve.At(Math.Max(0, figures[input])));
        }

        return risk;
    }

    private (ProtectionLevel, double) ByRisk(ReadOnlySpan<double> figures)
    {
        var excess = Math.Max(0, (RiskAt(figures) - RiskAtZero) / (1 - RiskAtZero));
        return (RiskBounds!.Of(excess * TwelfthDigit), excess);
    }

    private ProtectionLevel ByMeasures(ReadOnlySpan<double> figures)
    {
        var level = ProtectionLevel.High;
        foreach (var (input, bounds) in Measures)
        {
            level = ProtectionLevels.Worse(level, bounds.Of(figures[input]));
        }

        return level;
    }
}
