using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace Toepan.Web.Sheets;

/// <summary>The three faces of the PDF, read from this assembly.</summary>
public sealed class SheetFonts : IFontResolver
{
    private const string Heading = "heading";
    private const string Body = "text";
    private const string Bold = "strong";
    private static readonly Lock Registering = new();

    /// <summary>Makes the faces known to the PDF library, once for the process.</summary>
    public static void Register()
    {
        lock (Registering)
        {
            GlobalFontSettings.FontResolver ??= new SheetFonts();
        }
    }

    /// <summary>Literata, for headings.</summary>
    public static XFont Title(double size) => new(Heading, size);

    /// <summary>Atkinson Hyperlegible Next, for text.</summary>
    public static XFont Text(double size) => new(Body, size);

    /// <summary>The same, bold.</summary>
    public static XFont Strong(double size) => new(Bold, size);

    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
        familyName is Heading or Body or Bold ? new FontResolverInfo(familyName) : null;

    public byte[]? GetFont(string faceName)
    {
        using var stream = typeof(SheetFonts).Assembly.GetManifestResourceStream($"fonts/{faceName}.ttf")
            ?? throw new InvalidOperationException($"Font {faceName} is not in this build.");
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
