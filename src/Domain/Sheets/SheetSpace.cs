using System.Globalization;

namespace Toepan.Domain.Sheets;

/// <summary>How far the structure came, in centimetres and inches; a movement away from the driver is not told as one towards.</summary>
public static class SheetSpace
{
    private const double MmPerCm = 10;
    private const double MmPerInch = 25.4;

    public static IReadOnlyList<string> Of(SheetFacts facts, SheetTexts texts)
    {
        var sentences = new List<string>();
        Add(sentences, "space.footwell", facts.Value("structure.footwell.rearward"), texts);
        if (facts.Value("structure.wheel-hub.rearward") is { } back && facts.Value("structure.wheel-hub.upward") is { } up)
        {
            sentences.Add(texts.Say(
                "space.wheel",
                [.. Lengths(Math.Max(0, back), "", texts), .. Lengths(Math.Abs(up), "up", texts), ("direction", texts.Say(up < 0 ? "direction.down" : "direction.up"))]));
        }

        Add(sentences, "space.panel", Greater(facts.Value("structure.knee-panel-outer.rearward"), facts.Value("structure.knee-panel-inner.rearward")), texts);
        Add(sentences, "space.opening", facts.Value("structure.opening.closure"), texts);
        if (sentences.Count == 0)
        {
            sentences.Add(texts.Say("space.absent"));
        }

        return sentences;
    }

    private static double? Greater(double? a, double? b) => a > b || b is null ? a : b;

    private static void Add(List<string> sentences, string key, double? mm, SheetTexts texts)
    {
        if (mm is { } value)
        {
            sentences.Add(texts.Say(key, [.. Lengths(Math.Max(0, value), "", texts)]));
        }
    }

    private static IEnumerable<(string Name, object Value)> Lengths(double mm, string prefix, SheetTexts texts)
    {
        yield return (prefix.Length == 0 ? "cm" : prefix + "Cm", Text(mm / MmPerCm, texts.Culture));
        yield return (prefix.Length == 0 ? "in" : prefix + "In", Text(mm / MmPerInch, texts.Culture));
    }

    private static string Text(double value, CultureInfo culture) =>
        Math.Round(value, 1, MidpointRounding.AwayFromZero).ToString("F1", culture);
}
