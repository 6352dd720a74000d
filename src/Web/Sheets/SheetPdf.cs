using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;
using Toepan.Domain.Measures;
using Toepan.Domain.Ratings;
using Toepan.Domain.Sheets;
using Toepan.Web.Charts;
using Toepan.Web.Components;

namespace Toepan.Web.Sheets;

/// <summary>A composed sheet as a tagged one-page PDF: title, language, text alternatives, embedded fonts.</summary>
public static class SheetPdf
{
    private const double ColumnGap = 22;

    public static byte[] Render(ConsumerSheet sheet, StructureResult structure, DateTimeOffset preparedAt)
    {
        SheetFonts.Register();
        using var document = new PdfDocument();
        document.Info.Title = $"{sheet.Title}: offset frontal crash sheet";
        document.Info.CreationDate = preparedAt.UtcDateTime;
        document.ViewerPreferences.DisplayDocTitle = true;
        document.Language = "en-GB";
        var page = new SheetPage(document);
        Head(page, sheet);
        page.Rule();
        page.Section(() => Overall(page, sheet));
        page.Section(() => Space(page, sheet, structure));
        page.Rule(8);
        page.Section(() => Regions(page, sheet));
        page.Rule(8);
        Columns(page, sheet);
        Method(page, sheet);
        using var bytes = new MemoryStream();
        document.Save(bytes);
        return bytes.ToArray();
    }

    private static void Head(SheetPage page, ConsumerSheet sheet)
    {
        page.Write(PdfBlockLevelElementTag.Paragraph, "Frontal offset crash test", SheetFonts.Text(9), SheetInk.Second);
        page.Write(PdfBlockLevelElementTag.Heading1, sheet.Title, SheetFonts.Title(25), SheetInk.Ink, leading: 1.2);
        page.Y += 3;
        page.Write(PdfBlockLevelElementTag.Paragraph, sheet.AppliesTo, SheetFonts.Text(9.5), SheetInk.Second);
        if (sheet.NotForRelease is { } warning)
        {
            page.Y += 6;
            var height = page.Measure(warning, SheetFonts.Strong(9.5), SheetPage.Right - SheetPage.Left - 20) + 10;
            page.Decorate(g => g.DrawRectangle(SheetInk.Brush(SheetInk.Panel), SheetPage.Left, page.Y, SheetPage.Right - SheetPage.Left, height));
            page.Decorate(g => g.DrawRectangle(SheetInk.Brush(SheetInk.Plum), SheetPage.Left, page.Y, 3, height));
            page.Write(PdfBlockLevelElementTag.Paragraph, warning, SheetFonts.Strong(9.5), SheetInk.Ink, SheetPage.Left + 12, SheetPage.Right - 8);
            page.Y += 8;
        }
    }

    private static void Overall(SheetPage page, ConsumerSheet sheet)
    {
        const double Height = 26;
        var (top, text) = (page.Y + 13, LevelText(sheet.Level));
        page.Figure($"{text}{StepText(sheet.Level)}", new XRect(SheetPage.Left, top, PlateMeter.Width(Height), Height), g => PlateMeter.Draw(g, sheet.Level, SheetPage.Left, top, Height));
        page.Y = top - 7;
        page.Write(PdfBlockLevelElementTag.Heading2, text, SheetFonts.Title(20), SheetInk.Ink, SheetPage.Left + PlateMeter.Width(Height) + 14);
        page.Y = Math.Max(page.Y, top + Height) + 3;
        page.Write(PdfBlockLevelElementTag.Paragraph, sheet.Because, SheetFonts.Text(12), SheetInk.Ink, right: SheetPage.Right - 60);
    }

    private static void Space(SheetPage page, ConsumerSheet sheet, StructureResult structure)
    {
        const double Split = 372;
        var view = SideView.Of(structure.Points);
        var top = page.Y + 10;
        var height = 0.0;
        if (view.Drawable)
        {
            var drawing = new SideDrawing(view, SheetPage.Left, top, Split - SheetPage.Left);
            height = drawing.Height;
            var says = "Side view of the space around the driver, before and after: " + string.Join("; ", SideLabels.Of(view, UnitSystem.Metric).Select(l => $"{l.Title} {l.Figures}")) + ".";
            page.Figure(says, new XRect(SheetPage.Left, top, Split - SheetPage.Left, height), drawing.Draw);
        }

        page.Y = top - 4;
        page.Write(PdfBlockLevelElementTag.Heading2, "The space that was left", SheetFonts.Title(12), SheetInk.Ink, Split + 16);
        foreach (var sentence in sheet.Space)
        {
            page.Y += 4;
            page.Write(PdfBlockLevelElementTag.Paragraph, sentence, SheetFonts.Text(9.5), SheetInk.Ink, Split + 16);
        }

        page.Y += 4;
        page.Write(PdfBlockLevelElementTag.Paragraph, "Dashed: before. Solid: after. Tinted: space lost. Front to the left; measured points only.", SheetFonts.Text(8), SheetInk.Second, Split + 16);
        page.Y = Math.Max(page.Y, top + height);
    }

    private static void Regions(SheetPage page, ConsumerSheet sheet)
    {
        page.Y += 2;
        page.Write(PdfBlockLevelElementTag.Heading2, "What it would do to people", SheetFonts.Title(12), SheetInk.Ink);
        foreach (var region in sheet.Regions)
        {
            page.Y += 5;
            var (top, text) = (page.Y, LevelText(region.Level));
            page.Write(PdfBlockLevelElementTag.Heading3, region.Title, SheetFonts.Strong(9.5), SheetInk.Ink, right: 122);
            page.Figure(text, new XRect(124, top + 3, PlateMeter.Width(9), 9), g => PlateMeter.Draw(g, region.Level, 124, top + 3.5, 9));
            page.Y = top;
            page.Write(PdfBlockLevelElementTag.Paragraph, text, SheetFonts.Strong(9.5), SheetInk.Ink, 172, 284);
            page.Y = top;
            page.Write(PdfBlockLevelElementTag.Paragraph, region.Sentence, SheetFonts.Text(9.5), SheetInk.Ink, 286);
        }
    }

    private static void Columns(SheetPage page, ConsumerSheet sheet)
    {
        var middle = (SheetPage.Left + SheetPage.Right) / 2;
        var top = page.Y + 2;
        page.Y = top;
        page.Section(() => Sentences(page, "What inspection showed", sheet.Inspection, SheetPage.Left, middle - (ColumnGap / 2)));
        var first = page.Y;
        page.Y = top;
        page.Section(() => Sentences(page, "What this does not tell", sheet.NotTold, middle + (ColumnGap / 2), SheetPage.Right));
        page.Y = Math.Max(first, page.Y);
    }

    private static void Sentences(SheetPage page, string title, IReadOnlyList<string> sentences, double left, double right)
    {
        page.Write(PdfBlockLevelElementTag.Heading2, title, SheetFonts.Title(12), SheetInk.Ink, left, right);
        foreach (var sentence in sentences)
        {
            page.Y += 3;
            page.Write(PdfBlockLevelElementTag.Paragraph, sentence, SheetFonts.Text(9), SheetInk.Ink, left, right);
        }
    }

    private static void Method(SheetPage page, ConsumerSheet sheet)
    {
        var text = string.Join(" ", sheet.Method);
        var height = page.Measure(text, SheetFonts.Text(7.5), SheetPage.Right - SheetPage.Left);
        page.Y = Math.Max(page.Y + 8, SheetPage.Bottom - height - 6);
        page.Rule(0);
        page.Y += 2;
        page.Write(PdfBlockLevelElementTag.Paragraph, text, SheetFonts.Text(7.5), SheetInk.Second);
    }

    private static string LevelText(ProtectionLevel? level) =>
        level is { } known ? $"{char.ToUpperInvariant(known.Word()[0])}{known.Word()[1..]} protection" : "Not rated";

    private static string StepText(ProtectionLevel? level) => level is { } known ? $", step {4 - (int)known} of 4" : "";
}
