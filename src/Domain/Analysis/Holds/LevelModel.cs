using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Holds;

/// <summary>
/// The levels of one run as a function of its figures: which measures they depend on, and every region's and the overall level at any values
/// of them. What is absent stays absent and findings stay as they are. Tested to agree with <see cref="Rater"/>.
/// </summary>
public sealed class LevelModel
{
    private readonly IReadOnlyList<RegionModel> regions;
    private readonly OverallModel? overall;

    internal LevelModel(IReadOnlyList<LevelInput> inputs, IReadOnlyList<RegionModel> regions, OverallModel? overall, string? notRated)
    {
        (Inputs, this.regions, this.overall, NotRated) = (inputs, regions, overall, notRated);
        Values = [.. inputs.Select(input => input.Value)];
    }

    /// <summary>The figures, in a fixed order.</summary>
    public IReadOnlyList<LevelInput> Inputs { get; }

    /// <summary>The run's own values of <see cref="Inputs"/>.</summary>
    public IReadOnlyList<double> Values { get; }

    /// <summary>Why there is no overall level, or null.</summary>
    public string? NotRated { get; }

    /// <summary>Regions of every occupant in the rating's order, then the structure; a region not rated says why.</summary>
    public IReadOnlyList<(string Region, int? Position, string? NotRated)> Regions =>
        [.. regions.Select(region => (region.Region, region.Position, region.NotRated))];

    /// <summary>The overall level at these figures; null where the run has none.</summary>
    public ProtectionLevel? Overall(ReadOnlySpan<double> figures)
    {
        Span<ProtectionLevel> levels = stackalloc ProtectionLevel[regions.Count];
        return At(figures, levels);
    }

    /// <summary>Fills the level of each region (very low where it is not rated) and gives the overall level.</summary>
    public ProtectionLevel? At(ReadOnlySpan<double> figures, Span<ProtectionLevel> levels)
    {
        Span<RegionOutcome> outcomes = stackalloc RegionOutcome[regions.Count];
        for (var i = 0; i < regions.Count; i++)
        {
            outcomes[i] = regions[i].NotRated is null ? regions[i].At(figures) : new(ProtectionLevel.VeryLow, 1);
            levels[i] = outcomes[i].Level;
        }

        return overall?.At(outcomes);
    }

    /// <summary>The risk of each region at these figures; null where it is not rated on a risk. In the order of <see cref="Regions"/>.</summary>
    public IReadOnlyList<double?> RisksAt(ReadOnlySpan<double> figures)
    {
        var risks = new double?[regions.Count];
        for (var i = 0; i < risks.Length; i++)
        {
            risks[i] = regions[i] is { NotRated: null, RiskBounds: not null } region ? region.RiskAt(figures) : null;
        }

        return risks;
    }
}
