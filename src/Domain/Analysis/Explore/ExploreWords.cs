using System.Globalization;

namespace Toepan.Domain.Analysis.Explore;

/// <summary>Words of a question's sentences.</summary>
/// <param name="Runs">What is counted, plural: "light delivery vans", "runs".</param>
/// <param name="X">The first measure, in words.</param>
/// <param name="XUnit">Its unit; empty for none.</param>
/// <param name="Y">The second measure, in words; empty where none is asked for.</param>
/// <param name="Groups">What groups are formed by, plural.</param>
public sealed record ExploreWords(string Runs, string X, string XUnit, string Y, string Groups)
{
    /// <summary>Three significant digits with the first measure's unit.</summary>
    public string Figure(double value) => XUnit.Length > 0 ? $"{Number(value)} {XUnit}" : Number(value);

    /// <summary>Three significant digits, never in powers of ten, with a real minus sign.</summary>
    public static string Number(double value)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return "0";
        }

        var decimals = Math.Clamp(2 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 6);
        var text = Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.StartsWith('-') ? "\u2212" + text[1..] : text;
    }
}
