using System.Text.Json;

namespace Toepan.Domain.Packages.Iso13499;

/// <summary>The code tables of <c>Data/channel-codes.json</c>: data, so that a new code needs no new program.</summary>
internal static class ChannelCodeTables
{
    public const int CodeLength = 16;

    private sealed record Tables(string TestObjects, string Positions, HashSet<string> MainLocations, HashSet<string> Dimensions, string TimeDimension, string Directions, string FilterLetters);

    private static readonly Tables Known = Load();

    public static bool IsTestObject(char letter) => Known.TestObjects.Contains(letter, StringComparison.Ordinal);

    public static bool IsPosition(char letter) => Known.Positions.Contains(letter, StringComparison.Ordinal);

    public static bool IsMainLocation(string location) => Known.MainLocations.Contains(location);

    public static bool IsDimension(string dimension) => Known.Dimensions.Contains(dimension);

    public static bool IsDirection(char letter) => Known.Directions.Contains(letter, StringComparison.Ordinal);

    public static bool IsFilterLetter(char letter) => Known.FilterLetters.Contains(letter, StringComparison.Ordinal);

    /// <summary>True for the code of a channel whose samples are times.</summary>
    public static bool HoldsTimes(string code) => code.Length == CodeLength && code.AsSpan(12, 2).SequenceEqual(Known.TimeDimension);

    private static Tables Load()
    {
        using var stream = PackageResources.Open("Iso13499/Data/channel-codes.json");
        return JsonSerializer.Deserialize<Tables>(stream, JsonSerializerOptions.Web)!;
    }
}
