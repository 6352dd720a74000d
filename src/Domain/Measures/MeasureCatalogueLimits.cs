using System.Globalization;
using System.Text.Json;
using Toepan.Domain.Measures.Injury;

namespace Toepan.Domain.Measures;

/// <summary>
/// Limits in words, read from a scheme's document: limits are data of the scheme and stand there alone. Only its limits are looked at
/// (<c>regions[].limits[]</c> with measure, limit by dummy, unit and source), so any edition's document will do.
/// </summary>
public static class MeasureCatalogueLimits
{
    /// <summary>Name of the embedded document of the default scheme.</summary>
    public const string DefaultScheme = "Ratings/Data/offset-frontal-1.json";

    /// <summary>The limits of the default scheme, by measure code.</summary>
    public static IReadOnlyDictionary<string, string> OfDefaultScheme()
    {
        using var stream = typeof(MeasureCatalogueLimits).Assembly.GetManifestResourceStream(DefaultScheme)
            ?? throw new InvalidOperationException($"The assembly holds no {DefaultScheme}.");
        return Read(stream);
    }

    /// <summary>The limits of a scheme's document, by measure code; <c>{side}</c> in a code stands for left and right.</summary>
    public static IReadOnlyDictionary<string, string> Read(Stream scheme)
    {
        using var document = JsonDocument.Parse(scheme);
        var limits = document.RootElement.GetProperty("regions").EnumerateArray()
            .SelectMany(region => region.GetProperty("limits").EnumerateArray())
            .SelectMany(Sentences)
            .GroupBy(limit => limit.Code, limit => limit.Text);
        return limits.ToDictionary(limit => limit.Key, limit => string.Join("; ", limit.Distinct()), StringComparer.Ordinal);
    }

    private static IEnumerable<(string Code, string Text)> Sentences(JsonElement limit)
    {
        var unit = limit.GetProperty("unit").GetString() is { Length: > 0 } given ? " " + given : string.Empty;
        var values = limit.GetProperty("limit").EnumerateObject()
            .Select(dummy => $"{dummy.Name} {dummy.Value.GetDouble().ToString(CultureInfo.InvariantCulture)}{unit}");
        var text = $"{string.Join(", ", values)}: {limit.GetProperty("source").GetString()}";
        var code = limit.GetProperty("measure").GetString()!;
        return code.Contains("{side}", StringComparison.Ordinal)
            ? Side.Both.Select(side => (code.Replace("{side}", side.Word, StringComparison.Ordinal), text))
            : [(code, text)];
    }
}
