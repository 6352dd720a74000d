using System.Globalization;

namespace Toepan.Domain.Ratings.Documents;

/// <summary>
/// Reads the members of one object and reports what is missing, of the wrong kind, twice, or, at <see cref="Close"/>, not asked for. A bad
/// member is reported and replaced by a harmless value, so that one reading reports everything. <c>{side}</c> in text is filled in.
/// </summary>
internal sealed class ObjectReader
{
    /// <summary>Longest text accepted, characters.</summary>
    public const int LongestText = 1_000;

    /// <summary>Longest list accepted.</summary>
    public const int LongestList = 200;

    private readonly Dictionary<string, LinedMember> members = new(StringComparer.Ordinal);
    private readonly HashSet<string> asked = new(StringComparer.Ordinal);
    private readonly DocumentProblems problems;
    private readonly string? side;

    public ObjectReader(LinedNode node, DocumentProblems problems, string? side = null)
    {
        this.problems = problems;
        this.side = side;
        Line = node.Line;
        if (node is not LinedObject written)
        {
            problems.Add(node.Line, "kind", "An object is expected here.");
            return;
        }

        foreach (var member in written.Members.Where(member => !members.TryAdd(member.Name, member)))
        {
            problems.Add(member.Line, "twice", $"{member.Name} is given twice.");
        }
    }

    public int Line { get; }

    public IEnumerable<LinedMember> Members => members.Values;

    public bool Has(string name) => members.ContainsKey(name);

    public int LineOf(string name) => members.TryGetValue(name, out var member) ? member.Line : Line;

    public LinedNode? Node(string name)
    {
        asked.Add(name);
        if (members.TryGetValue(name, out var member))
        {
            return member.Value;
        }

        problems.Add(Line, "missing", $"{name} is missing.");
        return null;
    }

    public string Text(string name, bool mayBeEmpty = false)
    {
        if (Node(name) is not { } node)
        {
            return "";
        }

        var text = node is LinedScalar { IsNumber: false, Text: { } written } ? Filled(written) : null;
        if (text is null || (text.Length == 0 && !mayBeEmpty))
        {
            problems.Add(node.Line, "kind", $"{name} must be text.");
        }

        if (text?.Length > LongestText)
        {
            problems.Add(node.Line, "too-long", $"{name} has {text.Length} characters; at most {LongestText} are accepted.");
        }

        return text ?? "";
    }

    /// <summary>A whole number.</summary>
    public int Whole(string name)
    {
        var number = Number(name);
        if (number is >= -MostWhole and <= MostWhole && number == Math.Floor(number))
        {
            return (int)number;
        }

        problems.Add(LineOf(name), "kind", $"{name} is {number.ToString(CultureInfo.InvariantCulture)}; it must be a whole number of at most {MostWhole}.");
        return 0;
    }

    private const int MostWhole = 10_000;

    public double Number(string name) => Node(name) is { } node ? NumberOf(name, node) : 0;

    public double NumberOf(string name, LinedNode node)
    {
        if (node is LinedScalar { IsNumber: true, Text: { } text }
            && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value))
        {
            return value;
        }

        problems.Add(node.Line, "kind", $"{name} must be a number.");
        return 0;
    }

    public IReadOnlyList<LinedNode> List(string name, bool mayBeEmpty = false)
    {
        if (Node(name) is not { } node)
        {
            return [];
        }

        if (node is LinedList { Items.Count: > LongestList } many)
        {
            problems.Add(node.Line, "too-long", $"{name} has {many.Items.Count} entries; at most {LongestList} are accepted.");
            return [];
        }

        if (node is LinedList list && (list.Items.Count > 0 || mayBeEmpty))
        {
            return list.Items;
        }

        problems.Add(node.Line, "kind", $"{name} must be a list that is not empty.");
        return [];
    }

    public List<string> Texts(string name) => TextsOf(name, List(name));

    public List<IReadOnlyList<string>> Groups(string name) =>
        [.. List(name).Select(node => node is LinedList { Items.Count: > 0 } inner ? TextsOf(name, inner.Items) : Bad(name, node))];

    public ObjectReader Object(string name) => new(Node(name) ?? new LinedObject(Line, []), problems, side);

    public IEnumerable<ObjectReader> Objects(string name, bool mayBeEmpty = false) =>
        List(name, mayBeEmpty).Select(node => new ObjectReader(node, problems, side)).ToList();

    /// <summary>Reports members nobody asked for: a misspelt limit must not vanish.</summary>
    public void Close()
    {
        foreach (var member in members.Values.Where(member => !asked.Contains(member.Name)))
        {
            problems.Add(member.Line, "unknown", $"{member.Name} is not known here.");
        }
    }

    private List<string> TextsOf(string name, IReadOnlyList<LinedNode> nodes) =>
        [.. nodes.SelectMany(node => node is LinedScalar { IsNumber: false, Text: { Length: > 0 } text } ? [Filled(text)] : Bad(name, node))];

    private List<string> Bad(string name, LinedNode node)
    {
        problems.Add(node.Line, "kind", $"{name} must hold text.");
        return [];
    }

    private string Filled(string text) => side is null ? text : text.Replace("{side}", side, StringComparison.Ordinal);
}
