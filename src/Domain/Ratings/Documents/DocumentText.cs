using System.Text;
using System.Text.Json;

namespace Toepan.Domain.Ratings.Documents;

/// <summary>Bytes of a document → nodes. JSON by a name ending in .json, YAML by .yaml or .yml; with another name JSON where it begins like JSON.</summary>
internal static class DocumentText
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <exception cref="DocumentException">Neither; with the line.</exception>
    public static LinedNode Parse(ReadOnlySpan<byte> bytes, string file) => IsJson(bytes, file) ? Json(bytes) : Yaml(bytes);

    public static bool IsJson(ReadOnlySpan<byte> bytes, string file)
    {
        if (file.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        var start = bytes.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
        return !file.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) && !file.EndsWith(".yml", StringComparison.OrdinalIgnoreCase)
            && start.TrimStart(" \t\r\n"u8) is [(byte)'{', ..];
    }

    private static LinedNode Json(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return LinedJson.Parse(bytes);
        }
        catch (JsonException broken)
        {
            throw new DocumentException((int)(broken.LineNumber ?? 0) + 1, "not-json", $"The document is not JSON: {broken.Message}");
        }
    }

    private static LinedNode Yaml(ReadOnlySpan<byte> bytes)
    {
        try
        {
            var text = Utf8.GetString(bytes);
            return LinedYaml.Parse(text.StartsWith('\uFEFF') ? text[1..] : text);
        }
        catch (DecoderFallbackException)
        {
            throw new DocumentException(1, "not-text", "The document is not UTF-8 text.");
        }
    }
}
