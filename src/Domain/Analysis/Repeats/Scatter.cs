using Toepan.Domain.Analysis.Holds;

namespace Toepan.Domain.Analysis.Repeats;

/// <summary>How a measure scatters between runs.</summary>
public enum ScatterKind
{
    /// <summary>ln X is normal about ln x, variance ln(1 + CV²): dummy and pulse measures.</summary>
    LogNormal,

    /// <summary>X is normal about x: displacements.</summary>
    Normal,
}

/// <summary>
/// The scatter of a measure about one run's value x, which is taken as its median: log-normal X = x·exp(σZ), σ = √ln(1 + CV²), or
/// normal X = x + s·Z; Z standard normal. Methods edition 1, "Repeats".
/// </summary>
/// <param name="Kind">Log-normal or normal.</param>
/// <param name="Size">CV, or standard deviation in the measure's unit.</param>
/// <param name="Source">Where the figure comes from.</param>
/// <param name="RepeatGroups">Repeat groups of the programme it was pooled from; 0 = a default of the scheme.</param>
public sealed record Scatter(ScatterKind Kind, double Size, string Source, int RepeatGroups)
{
    private double Sigma { get; } = Kind == ScatterKind.LogNormal ? Math.Sqrt(Math.Log(1 + (Size * Size))) : Size;

    /// <summary>The value of a repeated run at a standard normal deviate.</summary>
    public double At(double value, double z) => Kind == ScatterKind.LogNormal ? value * Math.Exp(Sigma * z) : value + (Sigma * z);

    /// <summary>How many standard deviations a move from one value to another is; null where no deviate gets there.</summary>
    public double? Deviates(double value, double to)
    {
        if (Sigma == 0)
        {
            return null;
        }

        return Kind == ScatterKind.Normal ? (to - value) / Sigma
            : value > 0 && to > 0 ? Math.Log(to / value) / Sigma
            : null;
    }

    /// <summary>Chance that the value of a repeated run lies above a bound.</summary>
    public double ChanceAbove(double value, double bound) => Deviates(value, bound) is { } z
        ? StandardNormal.Below(-z)
        : At(value, 0) > bound ? 1 : 0;
}
