using PdfSharp.Drawing;
using Toepan.Domain.Ratings;

namespace Toepan.Web.Sheets;

/// <summary>The four leaning plates, filled from the left: more filled = more protection.</summary>
public static class PlateMeter
{
    private const int Steps = 4;

    public static void Draw(XGraphics graphics, ProtectionLevel? level, double x, double y, double height)
    {
        var (pitch, width, lean) = (height * 0.94, height * 0.65, height * 0.36);
        for (var plate = 0; plate < Steps; plate++)
        {
            var left = x + (plate * pitch);
            XPoint[] corners = [new(left + lean, y), new(left + lean + width, y), new(left + width, y + height), new(left, y + height)];
            var filled = level is { } known && plate < Steps - (int)known;
            if (filled)
            {
                graphics.DrawPolygon(SheetInk.Pen(SheetInk.Plum, 0.8), SheetInk.Brush(SheetInk.Plum), corners, XFillMode.Winding);
            }
            else
            {
                graphics.DrawPolygon(SheetInk.Pen(SheetInk.Edge, 0.8), corners);
            }
        }
    }

    /// <summary>Width of a meter of a height.</summary>
    public static double Width(double height) => (3 * height * 0.94) + (height * 1.01);
}
