using System.Globalization;
using System.Text.Json;

namespace Toepan.Api.Store;

/// <summary>One field of an entry, before and after.</summary>
/// <param name="Field">Path such as <c>facts · kerbMassKg</c>; empty where the whole is one value.</param>
/// <param name="Before">Text of what was; null where there was no such field.</param>
/// <param name="After">Text of what is; null where there is no such field.</param>
public sealed record AuditDifference(string Field, string? Before, string? After)
{
    private const string Separator = " · ";

    public bool Changed => !string.Equals(Before, After, StringComparison.Ordinal);

    /// <summary>Every field of either side, in the order it stands there; nested objects and lists as paths.</summary>
    public static IReadOnlyList<AuditDifference> Of(string? before, string? after)
    {
        var (was, now) = (Fields(before), Fields(after));
        return [.. was.Keys.Concat(now.Keys).Distinct(StringComparer.Ordinal)
            .Select(field => new AuditDifference(field, was.GetValueOrDefault(field), now.GetValueOrDefault(field)))];
    }

    private static Dictionary<string, string> Fields(string? json)
    {
        var fields = new Dictionary<string, string>(StringComparer.Ordinal);
        if (json is not null)
        {
            using var document = JsonDocument.Parse(json);
            Collect(document.RootElement, "", fields);
        }

        return fields;
    }

    private static void Collect(JsonElement element, string path, Dictionary<string, string> fields)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object when element.EnumerateObject().Any():
                foreach (var member in element.EnumerateObject())
                {
                    Collect(member.Value, Under(path, member.Name), fields);
                }

                break;
            case JsonValueKind.Array when element.EnumerateArray().Any(one => one.ValueKind is JsonValueKind.Object or JsonValueKind.Array):
                foreach (var (number, one) in element.EnumerateArray().Index())
                {
                    Collect(one, Under(path, (number + 1).ToString(CultureInfo.InvariantCulture)), fields);
                }

                break;
            default:
                fields[path] = Text(element);
                break;
        }
    }

    private static string Under(string path, string name) => path.Length == 0 ? name : path + Separator + name;

    private static string Text(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.String => element.GetString()!,
        JsonValueKind.True => "yes",
        JsonValueKind.False => "no",
        JsonValueKind.Null => "nothing",
        JsonValueKind.Array => element.GetArrayLength() == 0 ? "none" : string.Join(", ", element.EnumerateArray().Select(Text)),
        JsonValueKind.Object => "none",
        _ => element.GetRawText(),
    };
}
