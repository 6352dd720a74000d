using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Toepan.Api;

/// <summary>
/// Text that PostgreSQL can keep: U+0000 and lone surrogates, which it refuses, become U+FFFD. Packages and queries may hold anything.
/// </summary>
public static class StoredText
{
    private const char Replacement = '\uFFFD';

    public static string Clean(string text)
    {
        var at = FirstUnstorable(text, 0);
        if (at < 0)
        {
            return text;
        }

        var clean = new StringBuilder(text);
        for (; at >= 0; at = FirstUnstorable(text, at + 1))
        {
            clean[at] = Replacement;
        }

        return clean.ToString();
    }

    private static int FirstUnstorable(string text, int from)
    {
        for (var i = from; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                i++;
            }
            else if (text[i] == '\0' || char.IsSurrogate(text[i]))
            {
                return i;
            }
        }

        return -1;
    }
}

/// <summary>Every text column and every text a query compares it with.</summary>
internal sealed class StoredTextConversion() : ValueConverter<string, string>(text => StoredText.Clean(text), text => text);

/// <summary>Every text in a jsonb column.</summary>
internal sealed class StoredTextJson : JsonConverter<string>
{
    public override string? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetString();

    public override void Write(Utf8JsonWriter writer, string value, JsonSerializerOptions options) => writer.WriteStringValue(StoredText.Clean(value));

    public override string ReadAsPropertyName(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetString()!;

    public override void WriteAsPropertyName(Utf8JsonWriter writer, string value, JsonSerializerOptions options) =>
        writer.WritePropertyName(StoredText.Clean(value));
}
