using System.Text;
using System.Text.Unicode;

namespace Toepan.Domain.Packages.Archive;

/// <summary>Names of entries: how their bytes are read, and which are refused. Nothing is ever written under them, refused or not.</summary>
internal static class EntryNames
{
    /// <summary>Longest name accepted, bytes (our own bound).</summary>
    public const int MaxBytes = 512;

    // IBM code page 437, 0x80 to 0xFF: what a name without the UTF-8 flag is in by PKWARE APPNOTE D.1.
    private const string HighHalf =
        "ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜ¢£¥₧ƒáíóúñÑªº¿⌐¬½¼¡«»░▒▓│┤╡╢╖╕╣║╗╝╜╛┐└┴┬├─┼╞╟╚╔╩╦╠═╬╧╨╤╥╙╘╒╓╫╪┘┌█▄▌▐▀αßΓπΣσµτΦΘΩδ∞φε∩≡±≥≤⌠⌡÷≈°∙·√ⁿ²■\u00A0";

    /// <summary>Name bytes to text: UTF-8 where flagged or where it is valid UTF-8 (many tools forget the flag), else code page 437.</summary>
    public static string Decode(ReadOnlySpan<byte> name, bool utf8)
    {
        if (utf8 || Utf8.IsValid(name))
        {
            return Encoding.UTF8.GetString(name);
        }

        var text = new StringBuilder(name.Length);
        foreach (var b in name)
        {
            text.Append(b < 0x80 ? (char)b : HighHalf[b - 0x80]);
        }

        return text.ToString();
    }

    /// <summary>Why a name is refused, or null. A closing slash (a folder) is allowed.</summary>
    public static string? Refusal(string name)
    {
        if (name.Length == 0)
        {
            return "is empty";
        }

        if (name.Any(c => char.IsControl(c) || c is '\uFFFD' or '\uFFFE' or '\uFFFF'))
        {
            return "holds a control character or is not valid text";
        }

        if (name.Contains('\\', StringComparison.Ordinal))
        {
            return "holds a backslash";
        }

        if (name[0] == '/')
        {
            return "is absolute";
        }

        if (name.Length > 1 && name[1] == ':' && char.IsAsciiLetter(name[0]))
        {
            return "names a drive";
        }

        var segments = name.TrimEnd('/').Split('/');
        return segments.Any(segment => segment == "..") ? "climbs out of its folder"
            : segments.Any(segment => segment is "" or ".") || name.EndsWith("//", StringComparison.Ordinal) ? "has an empty or dot segment"
            : null;
    }

    /// <summary>Names that are the same file on a system that ignores case or composes accents have the same key.</summary>
    public static string Key(string name) => name.Normalize(NormalizationForm.FormC).ToUpperInvariant();

    /// <summary>What desktop systems add by themselves; never part of a package.</summary>
    public static bool IsLitter(string name) =>
        name.StartsWith("__MACOSX/", StringComparison.OrdinalIgnoreCase)
        || name.EndsWith(".DS_Store", StringComparison.OrdinalIgnoreCase)
        || name.EndsWith("Thumbs.db", StringComparison.OrdinalIgnoreCase);
}
