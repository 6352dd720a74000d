using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Toepan.Domain.Sheets;

/// <summary>
/// The one JSON form of a sheet document: members in their declared order, camelCase, enums as words, doubles in their shortest round-trip form, no
/// white space, UTF-8. Reading it back and writing it again gives the same bytes.
/// </summary>
public static class SheetDocumentJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
    };

    /// <summary>The canonical bytes.</summary>
    public static byte[] Write(SheetDocument document) => JsonSerializer.SerializeToUtf8Bytes(document, Options);

    /// <exception cref="JsonException">The bytes are no sheet document of this form.</exception>
    public static SheetDocument Read(ReadOnlySpan<byte> json) => JsonSerializer.Deserialize<SheetDocument>(json, Options) switch
    {
        { Form: SheetDocument.CurrentForm } document => document,
        { } other => throw new JsonException($"The sheet document has form {other.Form}; this program reads form {SheetDocument.CurrentForm}."),
        null => throw new JsonException("The sheet document is null."),
    };

    /// <summary>
    /// SHA-256, lower-case hex, of the canonical bytes without what the release fills (peers, answer, version, banner): what a reviewer signs.
    /// </summary>
    public static string Hash(SheetDocument document) =>
        Convert.ToHexStringLower(SHA256.HashData(Write(document with { Peers = null, Answer = null, Version = null, Banner = null })));
}
