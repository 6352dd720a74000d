using System.Globalization;

namespace Toepan.Domain.Packages;

/// <summary>Where a problem is: entry, line, channel, column of a table.</summary>
internal readonly record struct Place(string? File = null, int? Line = null, string? Channel = null, string? Column = null)
{
    public Place At(int? line) => this with { Line = line };

    public Place Of(string? channel) => this with { Channel = channel };
}

/// <summary>
/// Collects problems while a package is read. Of problems alike (same code, same file) the first <see cref="MaxAlike"/> are kept and the
/// rest counted, so that a hostile file cannot fill the memory with complaints.
/// </summary>
internal sealed class ProblemList
{
    private const int MaxAlike = 20;
    private const int MaxTotal = 5_000;
    private const int MaxValueLength = 80;

    private readonly List<Problem> problems = [];
    private readonly Dictionary<(string Code, string? File), (ProblemSeverity Severity, int Count)> seen = [];
    private int dropped;

    /// <summary>True once anything made the package unreadable.</summary>
    public bool Rejected => Rejections > 0;

    /// <summary>How many problems made the package unreadable.</summary>
    public int Rejections { get; private set; }

    /// <summary>An error that makes the whole package unreadable.</summary>
    public void Reject(string code, string message, Place place = default, string? value = null, string? limit = null)
    {
        Rejections++;
        Add(ProblemSeverity.Error, code, message, place, value, limit);
    }

    /// <summary>An error that leaves the package readable: one channel cannot be used.</summary>
    public void Error(string code, string message, Place place, string? value = null, string? limit = null) =>
        Add(ProblemSeverity.Error, code, message, place, value, limit);

    public void Warn(string code, string message, Place place, string? value = null, string? limit = null) =>
        Add(ProblemSeverity.Warning, code, message, place, value, limit);

    public void Note(string code, string message, Place place, string? value = null) =>
        Add(ProblemSeverity.Note, code, message, place, value, null);

    /// <summary>Everything collected, in order of finding, then what was only counted.</summary>
    public IReadOnlyList<Problem> ToList()
    {
        var all = new List<Problem>(problems);
        foreach (var ((code, file), (severity, count)) in seen)
        {
            if (count > MaxAlike && all.Count < 2 * MaxTotal)
            {
                var more = (count - MaxAlike).ToString(CultureInfo.InvariantCulture);
                all.Add(new(severity, ProblemCodes.MoreAlike, $"{more} more problems of the kind {code}.", file, Value: more, Limit: $"{MaxAlike}"));
            }
        }

        if (dropped > 0)
        {
            all.Add(new(ProblemSeverity.Warning, ProblemCodes.MoreAlike, $"{dropped} more problems of other kinds.", Value: $"{dropped}", Limit: $"{MaxTotal}"));
        }

        return all;
    }

    /// <summary>Text from a package, fit to be shown: control characters replaced, cut to a length a message can hold.</summary>
    public static string Show(string text)
    {
        var cut = text.Length > MaxValueLength ? string.Concat(text.AsSpan(0, MaxValueLength), "…") : text;
        return string.Create(cut.Length, cut, static (span, source) =>
        {
            for (var i = 0; i < span.Length; i++)
            {
                span[i] = char.IsControl(source[i]) || char.IsSurrogate(source[i]) ? '\uFFFD' : source[i];
            }
        });
    }

    private void Add(ProblemSeverity severity, string code, string message, Place place, string? value, string? limit)
    {
        var key = (code, place.File);
        var count = seen.TryGetValue(key, out var known) ? known.Count + 1 : 1;
        if (problems.Count >= MaxTotal && count <= MaxAlike && severity != ProblemSeverity.Error)
        {
            dropped++;
            return;
        }

        seen[key] = (severity, count);
        if (count <= MaxAlike)
        {
            problems.Add(new(severity, code, message, place.File, place.Line, place.Channel is null ? null : Show(place.Channel), value is null ? null : Show(value), limit, place.Column is null ? null : Show(place.Column)));
        }
    }
}
