using PdfSharp.Drawing;

namespace Toepan.Web.Sheets;

/// <summary>The printed colours: the light theme of the pages.</summary>
public static class SheetInk
{
    public static readonly XColor Ink = XColor.FromArgb(0x20, 0x20, 0x2d);
    public static readonly XColor Second = XColor.FromArgb(0x54, 0x54, 0x61);
    public static readonly XColor Edge = XColor.FromArgb(0x7f, 0x7f, 0x89);
    public static readonly XColor Hair = XColor.FromArgb(0xd5, 0xd3, 0xce);
    public static readonly XColor Plum = XColor.FromArgb(0x79, 0x35, 0x7e);
    public static readonly XColor PlumTint = XColor.FromArgb(0xe7, 0xd8, 0xe7);
    public static readonly XColor Panel = XColor.FromArgb(0xf2, 0xf0, 0xea);

    public static XBrush Brush(XColor color) => new XSolidBrush(color);

    public static XPen Pen(XColor color, double width) => new(color, width);
}
