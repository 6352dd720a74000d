using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Measures.Injury;

namespace Toepan.Domain.Analysis.Holds;

/// <summary>One measured figure that the levels of a run depend on.</summary>
/// <param name="Code">Measure code.</param>
/// <param name="Position">Seat position; null for the vehicle.</param>
/// <param name="Unit">Unit.</param>
/// <param name="Value">The run's value.</param>
/// <param name="Scatter">How it scatters between runs; null where that is not known.</param>
/// <param name="Behind">Where the figure is a risk whose load is no measure of its own: the curve that drives it; else null.</param>
public sealed record LevelInput(string Code, int? Position, string Unit, double Value, Scatter? Scatter, RiskFunction? Behind)
{
    /// <summary>Whether the figure is a probability, which ends at 1.</summary>
    public bool IsRisk => Code.StartsWith("risk.", StringComparison.Ordinal);

    /// <summary>Its value in a repeated run at a standard normal deviate; the run's own where no scatter is known.</summary>
    public double At(double z) => Scatter is null ? Value : Within(Scatter.At(Value, z));

    /// <summary>Its value were the load behind it multiplied by a factor.</summary>
    public double Scaled(double factor) => Behind is { } curve
        ? Within(curve.Evaluate(Math.Min(double.MaxValue, curve.Inverse(Value) * factor)))
        : Within(Value * factor);

    private double Within(double value) => IsRisk ? Math.Clamp(value, 0, 1) : value;
}
