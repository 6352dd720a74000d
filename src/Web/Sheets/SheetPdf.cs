using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;
using Toepan.Domain.Sheets;

namespace Toepan.Web.Sheets;

/// <summary>A sheet document in one language as a tagged one-page PDF: title, language, text alternatives, embedded fonts; no name of a person, machine or path.</summary>
public sealed class SheetPdf
{
    private const double ColumnGap = 22;
    private readonly SheetDocument sheet;
    private readonly SheetText text;
    private readonly SheetPage page;

    private SheetPdf(SheetDocument sheet, SheetText text, SheetPage page) => (this.sheet, this.text, this.page) = (sheet, text, page);

    /// <param name="language">Language tag; one the document lacks gives English.</param>
    public static byte[] Render(SheetDocument sheet, string language)
    {
        SheetFonts.Register();
        var text = sheet.In(language);
        using var pdf = new PdfDocument();
        pdf.Info.Title = $"{sheet.Vehicle.Name}: {text.Label("kicker")}";
        pdf.Info.Creator = "";
        pdf.Info.CreationDate = sheet.Version?.From.UtcDateTime ?? sheet.Method.Date.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
        pdf.ViewerPreferences.DisplayDocTitle = true;
        pdf.Language = text.Language;
        new SheetPdf(sheet, text, new SheetPage(pdf)).Write();
        using var bytes = new MemoryStream();
        pdf.Save(bytes);
        return bytes.ToArray();
    }

    private void Write()
    {
        Head();
        page.Rule();
        page.Section(Overall);
        page.Section(Space);
        page.Rule(8);
        page.Section(Regions);
        page.Rule(8);
        Columns();
        Method();
    }

    private void Head()
    {
        page.Write(PdfBlockLevelElementTag.Paragraph, text.Label("kicker"), SheetFonts.Text(9), SheetInk.Second);
        page.Write(PdfBlockLevelElementTag.Heading1, sheet.Vehicle.Name, SheetFonts.Title(25), SheetInk.Ink, leading: 1.2);
        page.Y += 3;
        page.Write(PdfBlockLevelElementTag.Paragraph, string.Join(" ", text.Applies), SheetFonts.Text(9.5), SheetInk.Second);
        if (text.NotForRelease is not { } reason)
        {
            return;
        }

        page.Y += 6;
        var warning = $"{text.Label("notForRelease")} {reason}";
        var height = page.Measure(warning, SheetFonts.Strong(9.5), SheetPage.Right - SheetPage.Left - 20) + 10;
        page.Decorate(g => g.DrawRectangle(SheetInk.Brush(SheetInk.Panel), SheetPage.Left, page.Y, SheetPage.Right - SheetPage.Left, height));
        page.Decorate(g => g.DrawRectangle(SheetInk.Brush(SheetInk.Plum), SheetPage.Left, page.Y, 3, height));
        page.Write(PdfBlockLevelElementTag.Paragraph, warning, SheetFonts.Strong(9.5), SheetInk.Ink, SheetPage.Left + 12, SheetPage.Right - 8);
        page.Y += 8;
    }

    private void Overall()
    {
        const double Height = 26;
        var top = page.Y + 13;
        var says = text.Step is { } step ? $"{text.Level}, {step}" : text.Level;
        page.Figure(says, new XRect(SheetPage.Left, top, PlateMeter.Width(Height), Height), g => PlateMeter.Draw(g, sheet.Overall, SheetPage.Left, top, Height));
        page.Y = top - 7;
        page.Write(PdfBlockLevelElementTag.Heading2, text.Level, SheetFonts.Title(20), SheetInk.Ink, SheetPage.Left + PlateMeter.Width(Height) + 14);
        page.Y = Math.Max(page.Y, top + Height) + 3;
        page.Write(PdfBlockLevelElementTag.Paragraph, text.Because.Text, SheetFonts.Text(12), SheetInk.Ink, right: SheetPage.Right - 60);
    }

    private void Space()
    {
        const double Split = 372;
        var side = SheetSide.Of(sheet, text);
        var top = page.Y + 10;
        var height = 0.0;
        if (side.View.Drawable)
        {
            var drawing = new SideDrawing(side, SheetPage.Left, top, Split - SheetPage.Left);
            height = drawing.Height;
            page.Figure(side.Says, new XRect(SheetPage.Left, top, Split - SheetPage.Left, height), drawing.Draw);
        }

        page.Y = top - 4;
        page.Write(PdfBlockLevelElementTag.Heading2, text.Label("space"), SheetFonts.Title(12), SheetInk.Ink, Split + 16);
        foreach (var sentence in text.Space)
        {
            page.Y += 4;
            page.Write(PdfBlockLevelElementTag.Paragraph, sentence.Text, SheetFonts.Text(9.5), SheetInk.Ink, Split + 16);
        }

        page.Y += 4;
        page.Write(PdfBlockLevelElementTag.Paragraph, text.Label("space.caption"), SheetFonts.Text(8), SheetInk.Second, Split + 16);
        page.Y = Math.Max(page.Y, top + height);
    }

    private void Regions()
    {
        page.Y += 2;
        page.Write(PdfBlockLevelElementTag.Heading2, text.Label("people"), SheetFonts.Title(12), SheetInk.Ink);
        page.Write(PdfBlockLevelElementTag.Paragraph, string.Join(" ", text.People), SheetFonts.Text(9), SheetInk.Second);
        foreach (var (region, said) in sheet.Regions.Zip(text.Regions))
        {
            page.Y += 4;
            var top = page.Y;
            page.Write(PdfBlockLevelElementTag.Heading3, said.Title, SheetFonts.Strong(9.5), SheetInk.Ink, right: 122);
            page.Figure(said.Level, new XRect(124, top + 3, PlateMeter.Width(9), 9), g => PlateMeter.Draw(g, region.Level, 124, top + 3.5, 9));
            page.Y = top;
            page.Write(PdfBlockLevelElementTag.Paragraph, said.Level, SheetFonts.Strong(9.5), SheetInk.Ink, 172, 284);
            page.Y = top;
            page.Write(PdfBlockLevelElementTag.Paragraph, said.Sentence.Text, SheetFonts.Text(9.5), SheetInk.Ink, 286);
        }
    }

    private void Columns()
    {
        var middle = (SheetPage.Left + SheetPage.Right) / 2;
        var (top, left) = (page.Y + 2, middle - (ColumnGap / 2));
        page.Y = top;
        page.Section(() => Sentences("inspection", text.Inspection, SheetPage.Left, left));
        page.Y += 6;
        page.Section(() => Sentences("holds", text.Holds, SheetPage.Left, left));
        var first = page.Y;
        page.Y = top;
        if (sheet.Peers is { } peers)
        {
            var said = peers.In(text.Language);
            IReadOnlyList<SheetSentence> levels = peers.Others.Count > 0 ? [said.Alternative] : [];
            page.Section(() => Sentences("peers", [.. said.Sentences.Where(_ => peers.Others.Count == 0), .. levels], middle + (ColumnGap / 2), SheetPage.Right));
            page.Y += 6;
        }

        page.Section(() => Sentences("not", text.NotTold, middle + (ColumnGap / 2), SheetPage.Right));
        page.Y = Math.Max(first, page.Y);
    }

    private void Sentences(string title, IReadOnlyList<SheetSentence> sentences, double left, double right)
    {
        page.Write(PdfBlockLevelElementTag.Heading2, text.Label(title), SheetFonts.Title(12), SheetInk.Ink, left, right);
        foreach (var sentence in sentences)
        {
            page.Y += 2;
            page.Write(PdfBlockLevelElementTag.Paragraph, sentence.Text, SheetFonts.Text(9), SheetInk.Ink, left, right);
        }
    }

    private void Method()
    {
        var method = string.Join(" ", text.Method);
        var height = page.Measure(method, SheetFonts.Text(7.5), SheetPage.Right - SheetPage.Left);
        page.Y = Math.Max(page.Y + 8, SheetPage.Bottom - height - 6);
        page.Rule(0);
        page.Y += 2;
        page.Write(PdfBlockLevelElementTag.Paragraph, method, SheetFonts.Text(7.5), SheetInk.Second);
    }
}
