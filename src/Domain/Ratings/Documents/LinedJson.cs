using System.Text.Json;

namespace Toepan.Domain.Ratings.Documents;

/// <summary>JSON text → <see cref="LinedNode"/>. Comments and trailing commas are accepted; depth as System.Text.Json's default, 64.</summary>
internal static class LinedJson
{
    private static readonly JsonReaderOptions Options = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    /// <exception cref="JsonException">Not JSON; the exception carries the line from 0.</exception>
    public static LinedNode Parse(ReadOnlySpan<byte> utf8)
    {
        var lines = new LineCounter(utf8.StartsWith("\uFEFF"u8) ? utf8[3..] : utf8);
        var reader = new Utf8JsonReader(lines.Text, Options);
        reader.Read();
        var root = Value(ref reader, ref lines);
        reader.Read();
        return root;
    }

    private static LinedNode Value(ref Utf8JsonReader reader, ref LineCounter lines)
    {
        var line = lines.At(reader.TokenStartIndex);
        return reader.TokenType switch
        {
            JsonTokenType.StartObject => new LinedObject(line, Members(ref reader, ref lines)),
            JsonTokenType.StartArray => new LinedList(line, Items(ref reader, ref lines)),
            JsonTokenType.Null => new LinedScalar(line, null, false),
            JsonTokenType.String => new LinedScalar(line, reader.GetString(), false),
            JsonTokenType.Number => new LinedScalar(line, System.Text.Encoding.UTF8.GetString(reader.ValueSpan), true),
            _ => new LinedScalar(line, reader.TokenType == JsonTokenType.True ? "true" : "false", false),
        };
    }

    private static List<LinedMember> Members(ref Utf8JsonReader reader, ref LineCounter lines)
    {
        var members = new List<LinedMember>();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
        {
            var (name, line) = (reader.GetString()!, lines.At(reader.TokenStartIndex));
            reader.Read();
            members.Add(new(name, line, Value(ref reader, ref lines)));
        }

        return members;
    }

    private static List<LinedNode> Items(ref Utf8JsonReader reader, ref LineCounter lines)
    {
        var items = new List<LinedNode>();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            items.Add(Value(ref reader, ref lines));
        }

        return items;
    }

    /// <summary>Line of a byte offset; offsets must not go back.</summary>
    private ref struct LineCounter(ReadOnlySpan<byte> text)
    {
        private int counted;
        private int line = 1;

        public ReadOnlySpan<byte> Text { get; } = text;

        public int At(long offset)
        {
            var end = (int)offset;
            line += Text[counted..end].Count((byte)'\n');
            counted = end;
            return line;
        }
    }
}
