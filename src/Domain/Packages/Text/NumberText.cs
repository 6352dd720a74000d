using System.Globalization;

namespace Toepan.Domain.Packages.Text;

/// <summary>Decimal text → double, correct to the last bit, invariant culture; a decimal comma is understood and told.</summary>
internal static class NumberText
{
    private const int LongestCommaNumber = 64;

    /// <summary>
    /// A finite number: sign, digits, decimal point, exponent. No thousands separators. A single comma and no point is a decimal comma.
    /// False for anything else, infinities and NaN included.
    /// </summary>
    public static bool TryParse(ReadOnlySpan<byte> text, out double value, out bool decimalComma)
    {
        decimalComma = false;
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value))
        {
            return double.IsFinite(value);
        }

        var comma = text.IndexOf((byte)',');
        if (comma < 0 || text.Length > LongestCommaNumber || text.Contains((byte)'.') || text[(comma + 1)..].Contains((byte)','))
        {
            return false;
        }

        Span<byte> pointed = stackalloc byte[LongestCommaNumber];
        text.CopyTo(pointed);
        pointed[comma] = (byte)'.';
        decimalComma = double.TryParse(pointed[..text.Length], NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
        return decimalComma;
    }

    /// <summary>The same for text already decoded.</summary>
    public static bool TryParse(string text, out double value, out bool decimalComma) =>
        TryParse(System.Text.Encoding.UTF8.GetBytes(text), out value, out decimalComma);
}
