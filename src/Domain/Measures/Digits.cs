using System.Globalization;

namespace Toepan.Domain.Measures;

/// <summary>
/// The rounding every stored or compared number goes through, so that the same bytes give the same digits on any machine.
/// </summary>
public static class Digits
{
    /// <summary>Significant decimal digits kept: enough for any comparison asked of a measure (1e-9), few enough to hide the last bits of a platform.</summary>
    public const int Significant = 12;

    // A double needs at most 17 digits to be told apart; 40 show on which side of a half it lies.
    private const string ExactFormat = "E40";

    /// <summary>
    /// <paramref name="value"/> to 12 significant decimal digits, half away from zero, judged on the exact decimal expansion of
    /// the double. Zero of either sign gives +0; infinities and NaN come back unchanged (the caller decides what they mean).
    /// </summary>
    public static double Round12(double value)
    {
        if (!double.IsFinite(value))
        {
            return value;
        }

        if (value == 0)
        {
            return 0;
        }

        var text = Math.Abs(value).ToString(ExactFormat, CultureInfo.InvariantCulture);
        var exponent = int.Parse(text.AsSpan(text.IndexOf('E', StringComparison.Ordinal) + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        var kept = long.Parse(string.Concat(text.AsSpan(0, 1), text.AsSpan(2, Significant - 1)), CultureInfo.InvariantCulture);
        if (text[Significant + 1] >= '5')
        {
            kept++;
        }

        var rounded = double.Parse(
            string.Create(CultureInfo.InvariantCulture, $"{kept}E{exponent - (Significant - 1)}"), NumberStyles.Float, CultureInfo.InvariantCulture);
        return value < 0 ? -rounded : rounded;
    }

    /// <inheritdoc cref="Round12(double)"/>
    public static double? Round12(double? value) => value is { } given ? Round12(given) : null;
}
