namespace Toepan.Domain.Ratings.Steps;

/// <summary>A measure that decides a level, and how far it may go before it decides another.</summary>
/// <param name="Code">Measure code.</param>
/// <param name="Value">Its value.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Largest">The largest value at which this measure by itself allows a level; +∞ where it allows the level whatever its value.</param>
/// <param name="Uncertainty">Standard uncertainty of the value, or null.</param>
/// <param name="Detail">What kind of maximum it is: the mode, the point; or null.</param>
internal sealed record Driver(
    string Code, double Value, string Unit, Func<ProtectionLevel, double> Largest, double? Uncertainty = null, string? Detail = null)
{
    /// <summary>How far the value must fall to allow a level; 0 where it allows it already.</summary>
    public double Over(ProtectionLevel level) => Math.Max(0, Value - Largest(level));

    /// <summary>Distance from a level to the next better and the next worse one; null where the driver alone cannot get there.</summary>
    /// <param name="level">Where the region is.</param>
    /// <param name="held">Whether something other than a measure holds it there.</param>
    public LevelMargin Margin(ProtectionLevel level, bool held) =>
        new(level == ProtectionLevel.High || held ? null : Finite(Over(level - 1)), Finite(Largest(level) - Value));

    private static double? Finite(double distance) => double.IsFinite(distance) ? Measures.Digits.Round12(distance) : null;
}
