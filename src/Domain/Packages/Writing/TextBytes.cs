using System.Text;
using System.Text.Unicode;

namespace Toepan.Domain.Packages.Writing;

/// <summary>Text → bytes the reader decodes to the same text.</summary>
internal static class TextBytes
{
    public const string LineEnd = "\r\n";

    /// <summary>
    /// ISO 8859-1 where it can hold the text and its bytes cannot be taken for UTF-8; else UTF-8 with a byte-order mark. NUL, which no text file
    /// holds, becomes U+FFFD.
    /// </summary>
    public static byte[] Of(string text)
    {
        text = WithoutNul(text);
        if (Ascii.IsValid(text))
        {
            return Encoding.ASCII.GetBytes(text);
        }

        if (text.All(c => c <= 0xFF) && Encoding.Latin1.GetBytes(text) is var latin && !Utf8.IsValid(latin))
        {
            return latin;
        }

        return [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text)];
    }

    /// <summary>NUL, which no reader of a package accepts, replaced by U+FFFD.</summary>
    public static string WithoutNul(string text) => text.Replace('\0', '\uFFFD');

    /// <summary>The text on one line: line ends become blanks.</summary>
    public static string OneLine(string text) => text.ReplaceLineEndings(" ").Replace('\r', ' ').Replace('\n', ' ');
}
