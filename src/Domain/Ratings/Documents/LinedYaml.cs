using System.Globalization;
using System.Text.RegularExpressions;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Toepan.Domain.Ratings.Documents;

/// <summary>
/// YAML text → <see cref="LinedNode"/>, as much of YAML as JSON can say: one document of mappings, lists and scalars. Plain scalars are
/// numbers, true, false or null as in YAML's JSON schema (YAML 1.2.2, 10.2); everything quoted is text. Anchors, aliases, tags and further
/// documents are refused: they let a short document grow without bound, or mean different things to different readers.
/// </summary>
internal sealed partial class LinedYaml
{
    /// <summary>Deepest nesting accepted; as for JSON.</summary>
    public const int MaxDepth = 64;

    /// <summary>Most values accepted.</summary>
    public const int MaxNodes = 50_000;

    private readonly Parser parser;
    private int nodes;
    private int line = 1;

    private LinedYaml(string text) => parser = new(new StringReader(text));

    /// <exception cref="DocumentException">Not YAML, or more of YAML than is accepted.</exception>
    public static LinedNode Parse(string text)
    {
        var yaml = new LinedYaml(text);
        try
        {
            return yaml.Document();
        }
        catch (YamlException broken)
        {
            throw new DocumentException(Math.Max(1, (int)broken.Start.Line), "not-yaml", $"The document is not YAML: {broken.Message}");
        }
        catch (Exception confused) when (confused is InvalidOperationException or ArgumentException)
        {
            // The scanner gives up on some texts without a line of its own; the last value it read is the nearest.
            throw new DocumentException(yaml.line, "not-yaml", "The document is not YAML: it cannot be read from here on.");
        }
    }

    private LinedNode Document()
    {
        parser.Consume<StreamStart>();
        if (parser.Accept<StreamEnd>(out _))
        {
            throw new DocumentException(1, "not-yaml", "The document is empty.");
        }

        parser.Consume<DocumentStart>();
        var root = Node(0);
        parser.Consume<DocumentEnd>();
        return parser.Accept<StreamEnd>(out _) ? root : throw new DocumentException(LineOf(parser.Current!), "yaml", "A scheme is one document; a second one begins here.");
    }

    private LinedNode Node(int depth)
    {
        var read = parser.Current!;
        parser.MoveNext();
        line = Math.Max(1, LineOf(read));
        if (depth > MaxDepth || ++nodes > MaxNodes)
        {
            throw new DocumentException(line, "yaml", $"The document nests deeper than {MaxDepth} or holds more than {MaxNodes} values.");
        }

        if (read is AnchorAlias || read is NodeEvent { Anchor.IsEmpty: false } or NodeEvent { Tag.IsEmpty: false })
        {
            throw new DocumentException(line, "yaml", "Anchors, aliases and tags are not accepted; write the values out.");
        }

        var here = line;
        return read switch
        {
            MappingStart => new LinedObject(here, Members(depth)),
            SequenceStart => new LinedList(here, Items(depth)),
            Scalar scalar => Value(scalar, here),
            _ => throw new DocumentException(line, "not-yaml", "A value is expected here."),
        };
    }

    private List<LinedMember> Members(int depth)
    {
        var members = new List<LinedMember>();
        while (!parser.TryConsume<MappingEnd>(out _))
        {
            var key = Node(depth + 1) as LinedScalar ?? throw new DocumentException(LineOf(parser.Current!), "yaml", "A member's name is text.");
            members.Add(new(key.Text ?? "", key.Line, Node(depth + 1)));
        }

        return members;
    }

    private List<LinedNode> Items(int depth)
    {
        var items = new List<LinedNode>();
        while (!parser.TryConsume<SequenceEnd>(out _))
        {
            items.Add(Node(depth + 1));
        }

        return items;
    }

    private static LinedScalar Value(Scalar scalar, int line) => scalar.Style != ScalarStyle.Plain ? new(line, scalar.Value, false)
        : scalar.Value is "" or "null" or "~" ? new(line, null, false)
        : new(line, scalar.Value, NumberPattern().IsMatch(scalar.Value) && double.TryParse(scalar.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out _));

    private static int LineOf(ParsingEvent read) => (int)read.Start.Line;

    [GeneratedRegex(@"\A[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?\z")]
    private static partial Regex NumberPattern();
}
