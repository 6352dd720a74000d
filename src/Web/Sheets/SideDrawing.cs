using PdfSharp.Drawing;
using Toepan.Web.Charts;

namespace Toepan.Web.Sheets;

/// <summary>The survival-space side view on paper: the same geometry as on the page.</summary>
public sealed class SideDrawing
{
    private const double LabelWidth = 118;
    private readonly SheetSide side;
    private readonly SideView view;
    private readonly SideFrame frame;
    private readonly double left;
    private readonly double top;

    public SideDrawing(SheetSide side, double left, double top, double width)
    {
        (this.side, view, this.left, this.top) = (side, side.View, left, top);
        frame = new SideFrame(view, width - LabelWidth - 14);
    }

    public double Height => frame.Height + 16;

    public void Draw(XGraphics graphics)
    {
        var (before, after) = (SheetInk.Pen(SheetInk.Ink, 0.7), SheetInk.Pen(SheetInk.Plum, 1.8));
        before.DashPattern = [4, 3];
        (after.LineCap, after.LineJoin) = (XLineCap.Round, XLineJoin.Round);
        if (view.Front.Count >= 2)
        {
            graphics.DrawPolygon(SheetInk.Brush(SheetInk.PlumTint), [.. view.Front.Select(p => At(p.Before)), .. view.Front.Reverse().Select(p => At(p.After))], XFillMode.Winding);
            graphics.DrawLines(before, [.. view.Front.Select(p => At(p.Before))]);
            graphics.DrawLines(after, [.. view.Front.Select(p => At(p.After))]);
        }

        Stretches(graphics, before);
        Wheel(graphics, before, after);
        Points(graphics);
        Labels(graphics);
        Scale(graphics);
    }

    private void Stretches(XGraphics graphics, XPen before)
    {
        foreach (var stretch in new[] { view.Seat, view.DoorFront, view.DoorRear }.Where(s => s.Count == 2))
        {
            graphics.DrawLine(before, At(stretch[0].Before), At(stretch[1].Before));
            graphics.DrawLine(SheetInk.Pen(SheetInk.Plum, 1.1), At(stretch[0].After), At(stretch[1].After));
        }
    }

    private void Wheel(XGraphics graphics, XPen before, XPen after)
    {
        if (view.Wheel is { } wheel)
        {
            var ring = 90 * frame.PerMm;
            Circle(graphics, before, At(wheel.Before), ring);
            graphics.DrawLine(SheetInk.Pen(SheetInk.Plum, 0.8), At(wheel.Before), At(wheel.After));
            Circle(graphics, after, At(wheel.After), ring);
        }
    }

    private void Points(XGraphics graphics)
    {
        foreach (var point in view.Front)
        {
            var at = At(point.After);
            graphics.DrawEllipse(SheetInk.Brush(SheetInk.Plum), at.X - 2, at.Y - 2, 4, 4);
        }
    }

    private void Labels(XGraphics graphics)
    {
        var labels = side.Labels.OrderBy(label => At(label.Anchor).Y).ToList();
        var rows = LabelSpread.Apart([.. labels.Select(label => At(label.Anchor).Y)], 27, top + 10, top + Height - 20);
        for (var i = 0; i < labels.Count; i++)
        {
            var (title, figures) = (SheetFonts.Text(8.5), SheetFonts.Strong(8.5));
            var right = left + LabelWidth;
            Ends(graphics, labels[i].Title, title, right, rows[i]);
            Ends(graphics, labels[i].Figures, figures, right, rows[i] + 11);
            graphics.DrawLine(SheetInk.Pen(SheetInk.Edge, 0.5), new XPoint(right + 4, rows[i] - 3), new XPoint(At(labels[i].Anchor).X - 4, At(labels[i].Anchor).Y));
        }
    }

    private void Scale(XGraphics graphics)
    {
        var (length, y, x) = (250 * frame.PerMm, top + Height - 2, left + LabelWidth + 14 + (1560 * frame.PerMm));
        graphics.DrawLine(SheetInk.Pen(SheetInk.Edge, 0.8), x - length, y, x, y);
        Ends(graphics, side.Scale, SheetFonts.Text(7.5), x, y - 4);
    }

    private static void Ends(XGraphics graphics, string text, XFont font, double right, double y) =>
        graphics.DrawString(text, font, SheetInk.Brush(SheetInk.Ink), right - graphics.MeasureString(text, font).Width, y);

    private static void Circle(XGraphics graphics, XPen pen, XPoint centre, double radius) =>
        graphics.DrawEllipse(pen, centre.X - radius, centre.Y - radius, 2 * radius, 2 * radius);

    private XPoint At(SidePlace place) => new(left + LabelWidth + 14 + frame.X(place), top + 8 + frame.Y(place));
}
