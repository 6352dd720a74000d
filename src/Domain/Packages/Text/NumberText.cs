using System.Globalization;

namespace Toepan.Domain.Packages.Text;

/// <summary>Decimal text → double, correct to the last bit, invariant culture; a decimal comma is understood and told.</summary>
internal static class NumberText
{
    private const int LongestCommaNumber = 64;

    /// <summary>As many decimal digits fit the 53-bit mantissa of a double exactly, whatever they are.</summary>
    private const int ExactDigits = 15;

    // 10^0 to 10^15, all exact in double.
    private static readonly double[] PowersOfTen = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    /// <summary>
    /// A finite number: sign, digits, decimal point, exponent. No thousands separators. A single comma and no point is a decimal comma.
    /// False for anything else, infinities and NaN included.
    /// </summary>
    public static bool TryParse(ReadOnlySpan<byte> text, out double value, out bool decimalComma)
    {
        decimalComma = false;
        if (TryPlain(text, out value))
        {
            return true;
        }

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

    // What nearly every sample is: sign, at most 15 digits, a point. Digits and power of ten are exact doubles, so the one division rounds
    // correctly (W. D. Clinger, "How to read floating point numbers accurately", 1990).
    private static bool TryPlain(ReadOnlySpan<byte> text, out double value)
    {
        value = 0;
        var at = !text.IsEmpty && text[0] is (byte)'-' or (byte)'+' ? 1 : 0;
        var negative = at == 1 && text[0] == '-';
        if (text.Length - at is 0 or > ExactDigits + 1)
        {
            return false;
        }

        long mantissa = 0;
        var (digits, point) = (0, -1);
        for (; at < text.Length; at++)
        {
            var digit = text[at] - '0';
            if (digit is >= 0 and <= 9)
            {
                mantissa = (mantissa * 10) + digit;
                digits++;
            }
            else if (text[at] == '.' && point < 0)
            {
                point = digits;
            }
            else
            {
                return false;
            }
        }

        if (digits is 0 or > ExactDigits)
        {
            return false;
        }

        var magnitude = mantissa / PowersOfTen[point < 0 ? 0 : digits - point];
        value = negative ? -magnitude : magnitude;
        return true;
    }

    /// <summary>The same for text already decoded.</summary>
    public static bool TryParse(string text, out double value, out bool decimalComma) =>
        TryParse(System.Text.Encoding.UTF8.GetBytes(text), out value, out decimalComma);
}
