using System.Globalization;

namespace Toepan.Domain.Programme;

/// <summary>Reads what was written of a preparation item and holds it against its bounds, in decimal arithmetic.</summary>
public static class PreparationJudge
{
    public const int LongestText = 4_000;
    private static readonly string[] LogTimes = ["yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss"];

    /// <summary>What is wrong with a text as a record of this item, in a sentence, or null.</summary>
    public static string? Fault(PreparationItem item, string text)
    {
        if (text.Length > LongestText)
        {
            return $"{item.Title} has at most {LongestText} characters.";
        }

        return item.Kind switch
        {
            PreparationKind.Number when Number(text) is null => $"{item.Title} is '{text.Trim()}'; it is a number in {item.Unit}.",
            PreparationKind.Log => LogFault(item, text),
            _ => null,
        };
    }

    /// <summary>The verdict on a record; null or blank text = not recorded. The text must have passed <see cref="Fault"/>.</summary>
    public static PreparationVerdict Judge(PreparationItem item, string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return new(item, null, null, null, Verdict.NotRecorded);
        }

        var worst = Readings(item, text).Select(reading => (Reading: reading, Margin: Margin(item, reading)))
            .OrderBy(judged => judged.Margin ?? decimal.MaxValue).Cast<(decimal Reading, decimal? Margin)?>().FirstOrDefault();
        return new(item, text.Trim(), worst?.Reading, worst?.Margin, worst?.Margin < 0 ? Verdict.Outside : Verdict.Within);
    }

    /// <summary>Titles of the required items nothing was recorded of.</summary>
    public static IReadOnlyList<string> Missing(IEnumerable<PreparationVerdict> verdicts) =>
        [.. verdicts.Where(verdict => verdict is { Item.Required: true, Verdict: Verdict.NotRecorded }).Select(verdict => verdict.Item.Title)];

    private static IEnumerable<decimal> Readings(PreparationItem item, string text) => item.Kind switch
    {
        PreparationKind.Number => Number(text) is { } number ? [number] : [],
        PreparationKind.Log => Lines(text).Select(line => Number(line[1])).OfType<decimal>(),
        _ => [],
    };

    private static string? LogFault(PreparationItem item, string text)
    {
        DateTime? before = null;
        foreach (var line in Lines(text))
        {
            if (line.Length != 2 || Time(line[0]) is not { } at || Number(line[1]) is null)
            {
                return $"{item.Title}: '{string.Join(' ', line)}' is not a time and a number such as '2031-03-13T18:00 21.3'.";
            }

            if (at <= before)
            {
                return $"{item.Title}: {line[0]} does not come after the line before.";
            }

            before = at;
        }

        return null;
    }

    private static IEnumerable<string[]> Lines(string text) => text
        .Split(['\n', '\r'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .Select(line => line.Split([' ', '\t', ';'], StringSplitOptions.RemoveEmptyEntries));

    private static DateTime? Time(string text) =>
        DateTime.TryParseExact(text, LogTimes, CultureInfo.InvariantCulture, DateTimeStyles.None, out var at) ? at : null;

    private static decimal? Number(string text) =>
        decimal.TryParse(text.Trim(), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static decimal? Margin(PreparationItem item, decimal reading) => (reading - item.Lower, item.Upper - reading) switch
    {
        ({ } above, { } below) => Math.Min(above, below),
        var (above, below) => above ?? below,
    };
}
