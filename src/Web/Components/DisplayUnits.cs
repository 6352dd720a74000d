using System.Globalization;

namespace Toepan.Web.Components;

/// <summary>A figure ready for the page.</summary>
/// <param name="Number">Digits with a real minus sign, or an en dash for nothing.</param>
/// <param name="Unit">Unit shown beside it; empty for none.</param>
public sealed record ShownFigure(string Number, string Unit)
{
    public static ShownFigure Nothing { get; } = new("–", "");
}

/// <summary>
/// How figures are shown: US units where the reader asks for them, and as many decimals as the unit deserves, rounded half away from
/// zero. For display only; stored and exported figures are never touched. Factors: NIST SP 811 appendix B (exact inch, mile and pound).
/// </summary>
public static class DisplayUnits
{
    private const double MillimetresPerInch = 25.4;
    private const double KilometresPerMile = 1.609344;
    private const double KilogramsPerPound = 0.45359237;
    private const double MetresPerFoot = 0.3048;
    private const double NewtonsPerPoundForce = KilogramsPerPound * 9.80665;

    private sealed record Scale(string Unit, double Factor, double Offset = 0);

    private static readonly Dictionary<string, Scale> Us = new(StringComparer.Ordinal)
    {
        ["km/h"] = new("mph", 1 / KilometresPerMile),
        ["m/s"] = new("ft/s", 1 / MetresPerFoot),
        ["mm"] = new("in", 1 / MillimetresPerInch),
        ["kg"] = new("lb", 1 / KilogramsPerPound),
        ["N"] = new("lbf", 1 / NewtonsPerPoundForce),
        ["kN"] = new("lbf", 1000 / NewtonsPerPoundForce),
        ["N·m"] = new("lbf·ft", 1 / (NewtonsPerPoundForce * MetresPerFoot)),
        ["°C"] = new("°F", 1.8, 32),
    };

    private static readonly Dictionary<string, int> Decimals = new(StringComparer.Ordinal)
    {
        ["km/h"] = 2, ["mph"] = 2, ["m/s"] = 2, ["ft/s"] = 1, ["mm"] = 1, ["in"] = 2, ["kg"] = 1, ["lb"] = 0, ["N"] = 0, ["lbf"] = 0,
        ["kN"] = 2, ["N·m"] = 1, ["lbf·ft"] = 1, ["g"] = 1, ["°C"] = 1, ["°F"] = 1, ["%"] = 1, ["deg"] = 1, ["ms"] = 1, ["MPa"] = 3, ["kPa"] = 0, ["°"] = 1, ["km"] = 0,
    };

    /// <summary>The figure as shown; null and non-finite values are an en dash.</summary>
    /// <param name="value">Value in <paramref name="unit"/>.</param>
    /// <param name="unit">Working unit; <c>probability</c> is shown in per cent; empty for none.</param>
    /// <param name="system">Units the reader chose.</param>
    /// <param name="difference">Leaves a scale's offset out.</param>
    public static ShownFigure Show(double? value, string unit, UnitSystem system, bool difference = false)
    {
        if (value is not { } number || !double.IsFinite(number))
        {
            return ShownFigure.Nothing;
        }

        if (unit == "probability")
        {
            return new(Text(number * 100, 1), "%");
        }

        if (system == UnitSystem.Us && Us.TryGetValue(unit, out var scale))
        {
            unit = scale.Unit;
            number = (number * scale.Factor) + (difference ? 0 : scale.Offset);
        }

        return new(Text(number, unit is "kg" && number == Math.Round(number) ? 0 : Decimals.TryGetValue(unit, out var decimals) ? decimals : Free(number)), unit);
    }

    /// <summary>What a figure in a working unit is multiplied by to be shown; for scales without an offset.</summary>
    public static double Factor(string unit, UnitSystem system) =>
        system == UnitSystem.Us && Us.TryGetValue(unit, out var scale) ? scale.Factor : 1;

    /// <summary>Decimals of a figure without unit: none from 100 up, else two or three.</summary>
    private static int Free(double value) => Math.Abs(value) switch { 0 => 0, >= 100 => 0, >= 10 => 1, >= 0.1 => 2, _ => 3 };

    private static string Text(double value, int decimals)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        var text = rounded.ToString(string.Create(CultureInfo.InvariantCulture, $"F{decimals}"), CultureInfo.InvariantCulture);
        return rounded < 0 ? "\u2212" + text[1..] : text.TrimStart('-');
    }
}
