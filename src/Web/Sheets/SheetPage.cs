using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Toepan.Web.Sheets;

/// <summary>One PDF page with a writing position: every text is tagged with its role in reading order, every line and plate is an artifact or a figure.</summary>
public sealed class SheetPage
{
    public const double Left = 46;
    public const double Right = 549;
    public const double Bottom = 806;
    private readonly StructureBuilder tags;

    public SheetPage(PdfDocument document)
    {
        tags = UAManager.ForDocument(document).StructureBuilder;
        var page = document.AddPage();
        (page.Width, page.Height) = (XUnit.FromPoint(595), XUnit.FromPoint(842));
        Graphics = XGraphics.FromPdfPage(page);
    }

    public XGraphics Graphics { get; }

    /// <summary>Where the next text begins, pt from the top.</summary>
    public double Y { get; set; } = 40;

    /// <summary>Writes a block of text at the position, wrapped, and moves below it.</summary>
    public void Write(PdfBlockLevelElementTag tag, string text, XFont font, XColor color, double left = Left, double right = Right, double leading = 1.32)
    {
        tags.BeginElement(tag);
        foreach (var line in TextWrap.Lines(Graphics, text, font, right - left))
        {
            Y += font.Size * leading;
            Graphics.DrawString(line, font, SheetInk.Brush(color), left, Y);
        }

        tags.End();
    }

    /// <summary>Height a block would take.</summary>
    public double Measure(string text, XFont font, double width, double leading = 1.32) =>
        TextWrap.Lines(Graphics, text, font, width).Count * font.Size * leading;

    /// <summary>Draws something that carries no meaning of its own.</summary>
    public void Decorate(Action<XGraphics> draw)
    {
        tags.BeginArtifact();
        draw(Graphics);
        tags.End();
    }

    /// <summary>Draws a figure with its text alternative.</summary>
    public void Figure(string alternative, XRect box, Action<XGraphics> draw)
    {
        tags.BeginElement(PdfIllustrationElementTag.Figure, alternative, box);
        draw(Graphics);
        tags.End();
    }

    /// <summary>Groups what is written inside as one section.</summary>
    public void Section(Action write)
    {
        tags.BeginElement(PdfGroupingElementTag.Section);
        write();
        tags.End();
    }

    public void Rule(double gap = 10)
    {
        Y += gap;
        Decorate(g => g.DrawLine(SheetInk.Pen(SheetInk.Hair, 0.7), Left, Y, Right, Y));
    }
}
