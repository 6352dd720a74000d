using System.Globalization;
using System.Text.Json;

namespace Toepan.Domain.Packages.Manifest;

/// <summary>
/// One object of programme.json: members by name, with a problem for each that is missing, of another type or out of range. What nobody
/// asked for is unknown.
/// </summary>
internal sealed class JsonView(JsonElement element, string path, JsonLines lines, ProblemList problems)
{
    private readonly HashSet<string> asked = [];

    public string Path => path;

    public ProblemList Problems => problems;

    public Place PlaceOf(string name) => lines.Of(JsonPaths.Member(path, name));

    /// <summary>A text that is not blank, trimmed.</summary>
    public string? Text(string name, int longest, bool required = false)
    {
        if (Member(name, required, JsonValueKind.String, "a text") is not { } value)
        {
            return null;
        }

        var text = value.GetString()!.Trim();
        if (text.Length > longest || (required && text.Length == 0))
        {
            problems.Reject(ProblemCodes.BadValue, $"{JsonPaths.Member(path, name)} must have 1 to {longest} characters.", PlaceOf(name), text, longest.ToString(CultureInfo.InvariantCulture));
            return null;
        }

        return text.Length == 0 ? null : text;
    }

    /// <summary>A number within inclusive bounds.</summary>
    public decimal? Number(string name, decimal lowest, decimal highest, bool required = false) =>
        Member(name, required, JsonValueKind.Number, "a number") is { } value ? InRange(value, JsonPaths.Member(path, name), lowest, highest) : null;

    /// <summary>A whole number within inclusive bounds.</summary>
    public int? Whole(string name, int lowest, int highest, bool required = false)
    {
        if (Number(name, lowest, highest, required) is not { } number)
        {
            return null;
        }

        if (number == decimal.Truncate(number))
        {
            return (int)number;
        }

        RejectRange(JsonPaths.Member(path, name), Written(element.GetProperty(name)), "a whole number");
        return null;
    }

    /// <summary>A list of numbers within inclusive bounds, between two lengths; null where it is absent or not good.</summary>
    public IReadOnlyList<decimal>? Numbers(string name, decimal lowest, decimal highest, (int Fewest, int Most) length, bool required = false)
    {
        if (Items(name, length, required) is not { } items)
        {
            return null;
        }

        var numbers = new List<decimal>();
        foreach (var (item, itemPath) in items)
        {
            if (item.ValueKind != JsonValueKind.Number)
            {
                RejectType(itemPath, "a number", item);
            }
            else if (InRange(item, itemPath, lowest, highest) is { } number)
            {
                numbers.Add(number);
            }
        }

        return numbers.Count == items.Count ? numbers : null;
    }

    public JsonView? Object(string name, bool required = false) =>
        Member(name, required, JsonValueKind.Object, "an object") is { } value ? new JsonView(value, JsonPaths.Member(path, name), lines, problems) : null;

    /// <summary>A list of objects between two lengths.</summary>
    public IReadOnlyList<JsonView>? Objects(string name, (int Fewest, int Most) length, bool required = false)
    {
        if (Items(name, length, required) is not { } items)
        {
            return null;
        }

        var views = new List<JsonView>();
        foreach (var (item, itemPath) in items)
        {
            if (item.ValueKind == JsonValueKind.Object)
            {
                views.Add(new JsonView(item, itemPath, lines, problems));
            }
            else
            {
                RejectType(itemPath, "an object", item);
            }
        }

        return views;
    }

    /// <summary>Adds every member nobody asked for, and warns of it.</summary>
    public void KeepUnknown(Dictionary<string, JsonElement> unknown)
    {
        foreach (var member in element.EnumerateObject().Where(member => !asked.Contains(member.Name)))
        {
            var memberPath = JsonPaths.Member(path, member.Name);
            unknown.Add(memberPath, member.Value.Clone());
            problems.Warn(ProblemCodes.UnknownMember, $"The member {ProblemList.Show(memberPath)} is unknown; it is kept.", lines.Of(memberPath), member.Name);
        }
    }

    private List<(JsonElement Item, string Path)>? Items(string name, (int Fewest, int Most) length, bool required)
    {
        if (Member(name, required, JsonValueKind.Array, "a list") is not { } value)
        {
            return null;
        }

        var listPath = JsonPaths.Member(path, name);
        var count = value.GetArrayLength();
        if (count < length.Fewest || count > length.Most)
        {
            RejectRange(listPath, $"{count} items", $"{length.Fewest} to {length.Most} items");
            return null;
        }

        return [.. value.EnumerateArray().Select((item, index) => (item, JsonPaths.Item(listPath, index)))];
    }

    // Null is the same as absent.
    private JsonElement? Member(string name, bool required, JsonValueKind kind, string what)
    {
        asked.Add(name);
        if (!element.TryGetProperty(name, out var value) || value.ValueKind == JsonValueKind.Null)
        {
            if (required)
            {
                problems.Reject(ProblemCodes.Missing, $"{JsonPaths.Member(path, name)} is missing.", PlaceOf(name), name);
            }

            return null;
        }

        if (value.ValueKind == kind)
        {
            return value;
        }

        RejectType(JsonPaths.Member(path, name), what, value);
        return null;
    }

    private decimal? InRange(JsonElement value, string valuePath, decimal lowest, decimal highest)
    {
        if (value.TryGetDecimal(out var number) && number >= lowest && number <= highest)
        {
            return number;
        }

        RejectRange(valuePath, Written(value), string.Create(CultureInfo.InvariantCulture, $"{lowest} to {highest}"));
        return null;
    }

    private void RejectRange(string valuePath, string value, string limit) =>
        problems.Reject(ProblemCodes.OutOfRange, $"{valuePath} is {ProblemList.Show(value)}; it must be {limit}.", lines.Of(valuePath), value, limit);

    private void RejectType(string valuePath, string wanted, JsonElement value) =>
        problems.Reject(ProblemCodes.WrongType, $"{valuePath} must be {wanted}.", lines.Of(valuePath), Written(value), wanted);

    private static string Written(JsonElement value) => value.GetRawText();
}
