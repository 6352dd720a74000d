using System.Globalization;
using System.Text.Json;
using System.Text.Unicode;

namespace Toepan.Domain.Packages.Manifest;

/// <summary>
/// Line of every value of a JSON text, by path. Building it is also the first check: syntax, depth, duplicate members, text and numbers a
/// database can keep.
/// </summary>
internal sealed class JsonLines
{
    /// <summary>Deepest nesting accepted; programme.json needs 3 (our own bound).</summary>
    public const int MaxDepth = 32;

    /// <summary>Longest number accepted, characters (our own bound).</summary>
    private const int MaxNumberLength = 64;

    private readonly Dictionary<string, int> lines = [];
    private readonly ReadOnlyMemory<byte> json;
    private readonly string file;
    private readonly ProblemList problems;
    private int countedTo;
    private int line = 1;

    private JsonLines(ReadOnlyMemory<byte> json, string file, ProblemList problems) => (this.json, this.file, this.problems) = (json, file, problems);

    /// <summary>Reads through the text; null, and the package is refused, where it is no JSON to build on.</summary>
    public static JsonLines? Index(ReadOnlyMemory<byte> json, string file, ProblemList problems)
    {
        var index = new JsonLines(json, file, problems);
        if (!Utf8.IsValid(json.Span))
        {
            problems.Reject(ProblemCodes.Encoding, $"{file} is not valid UTF-8.", new Place(file));
            return null;
        }

        try
        {
            return index.Walk() ? index : null;
        }
        catch (JsonException syntax)
        {
            var at = (int)Math.Min(int.MaxValue - 1, syntax.LineNumber ?? 0) + 1;
            problems.Reject(ProblemCodes.JsonSyntax, $"{file} is not valid JSON at line {at}, byte {syntax.BytePositionInLine + 1}.", new Place(file, at));
            return null;
        }
    }

    /// <summary>Where a value is; its nearest parent's line where the value itself is missing.</summary>
    public Place Of(string path)
    {
        while (true)
        {
            if (lines.TryGetValue(path, out var at))
            {
                return new Place(file, at);
            }

            var cut = path.LastIndexOfAny(['.', '[']);
            if (cut <= 0)
            {
                return new Place(file, 1);
            }

            path = path[..cut];
        }
    }

    private sealed class Container(string path, bool array)
    {
        private int next;

        public string Path => path;

        public string? Pending { get; set; }

        public string NextPath() => array ? JsonPaths.Item(path, next++) : Pending ?? path;
    }

    private bool Walk()
    {
        var reader = new Utf8JsonReader(json.Span, new JsonReaderOptions { MaxDepth = MaxDepth * 2 });
        var open = new Stack<Container>();
        while (reader.Read())
        {
            if (reader.CurrentDepth >= MaxDepth)
            {
                problems.Reject(ProblemCodes.JsonTooDeep, $"{file} nests deeper than {MaxDepth} levels.", new Place(file, LineAt(reader.TokenStartIndex)), null, MaxDepth.ToString(CultureInfo.InvariantCulture));
                return false;
            }

            if (!Take(ref reader, open))
            {
                return false;
            }
        }

        return true;
    }

    private bool Take(ref Utf8JsonReader reader, Stack<Container> open)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.PropertyName:
                return TakeName(ref reader, open.Peek());
            case JsonTokenType.EndObject or JsonTokenType.EndArray:
                open.Pop();
                return true;
            default:
                var path = open.Count == 0 ? JsonPaths.Root : open.Peek().NextPath();
                lines[path] = LineAt(reader.TokenStartIndex);
                if (reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
                {
                    open.Push(new Container(path, reader.TokenType == JsonTokenType.StartArray));
                }

                return TakeValue(ref reader, path);
        }
    }

    private bool TakeName(ref Utf8JsonReader reader, Container parent)
    {
        if (Text(ref reader, parent.Path) is not { } name)
        {
            return false;
        }

        parent.Pending = JsonPaths.Member(parent.Path, name);
        if (lines.TryAdd(parent.Pending, LineAt(reader.TokenStartIndex)))
        {
            return true;
        }

        problems.Reject(ProblemCodes.JsonDuplicate, $"The member {ProblemList.Show(parent.Pending)} is there twice.", new Place(file, LineAt(reader.TokenStartIndex)), name);
        return false;
    }

    private bool TakeValue(ref Utf8JsonReader reader, string path)
    {
        if (reader.TokenType == JsonTokenType.String)
        {
            return Text(ref reader, path) is not null;
        }

        if (reader.TokenType != JsonTokenType.Number)
        {
            return true;
        }

        // A double that is infinite, or so small that it is not a normal number, no column of a database keeps either.
        if (reader.ValueSpan.Length <= MaxNumberLength && reader.TryGetDouble(out var number) && (number == 0 ? !HasExponent(reader.ValueSpan) : double.IsNormal(number)))
        {
            return true;
        }

        problems.Reject(ProblemCodes.OutOfRange, $"{ProblemList.Show(path)} is a number no measurement has.", new Place(file, LineAt(reader.TokenStartIndex)), System.Text.Encoding.UTF8.GetString(reader.ValueSpan));
        return false;
    }

    private static bool HasExponent(ReadOnlySpan<byte> number) => number.ContainsAny((byte)'e', (byte)'E');

    // Null where escapes spell half a surrogate pair or a NUL: text that cannot be stored.
    private string? Text(ref Utf8JsonReader reader, string path)
    {
        string? text;
        try
        {
            text = reader.GetString();
        }
        catch (InvalidOperationException)
        {
            text = null;
        }

        if (text is null || text.Contains('\0', StringComparison.Ordinal))
        {
            problems.Reject(ProblemCodes.JsonText, $"A text at {ProblemList.Show(path)} holds a NUL or half a surrogate pair.", new Place(file, LineAt(reader.TokenStartIndex)));
            return null;
        }

        return text;
    }

    private int LineAt(long position)
    {
        line += json.Span[countedTo..(int)position].Count((byte)'\n');
        countedTo = (int)position;
        return line;
    }
}
