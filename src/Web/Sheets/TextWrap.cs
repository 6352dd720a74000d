using PdfSharp.Drawing;

namespace Toepan.Web.Sheets;

/// <summary>Breaks text into lines of a width.</summary>
public static class TextWrap
{
    /// <summary>Lines by words; a word longer than the line is broken by characters.</summary>
    public static IReadOnlyList<string> Lines(XGraphics graphics, string text, XFont font, double width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Pieces(graphics, w, font, width)))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && graphics.MeasureString(longer, font).Width > width)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    private static IEnumerable<string> Pieces(XGraphics graphics, string word, XFont font, double width)
    {
        while (word.Length > 1 && graphics.MeasureString(word, font).Width > width)
        {
            var length = word.Length - 1;
            while (length > 1 && graphics.MeasureString(word[..length], font).Width > width)
            {
                length--;
            }

            yield return word[..length];
            word = word[length..];
        }

        yield return word;
    }
}
