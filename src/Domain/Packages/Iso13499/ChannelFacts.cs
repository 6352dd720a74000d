using System.Globalization;
using Toepan.Domain.Packages.Text;

namespace Toepan.Domain.Packages.Iso13499;

/// <summary>A header value read as a number: absent, a number, or text that is none.</summary>
internal readonly record struct HeaderNumber(HeaderEntry? Entry, double? Value, bool DecimalComma)
{
    public bool Absent => Entry is null;
}

/// <summary>What a channel's header says, read but not judged. Reader and writer both go by it.</summary>
internal sealed record ChannelFacts
{
    /// <summary>Longest code kept as written.</summary>
    private const int LongestCode = 64;

    /// <summary>Upper case; null where the header has none.</summary>
    public required string? Code { get; init; }

    /// <summary>As written, or empty.</summary>
    public required string Unit { get; init; }

    public required string? FilterClass { get; init; }

    public required HeaderNumber AmplitudeClass { get; init; }

    public required HeaderNumber Interval { get; init; }

    public required HeaderNumber FirstSample { get; init; }

    public required HeaderEntry? CountEntry { get; init; }

    /// <summary>Code of the channel that holds the times, empty where it is explicit but not named; null where times are implicit.</summary>
    public required string? TimesFrom { get; init; }

    /// <summary>Stated number of samples; null where there is none or it is no count.</summary>
    public int? Count =>
        CountEntry is not null && int.TryParse(CountEntry.Value, NumberStyles.AllowTrailingWhite | NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture, out var count)
            ? count
            : null;

    public static ChannelFacts Of(IReadOnlyList<HeaderEntry> header)
    {
        var reference = HeaderText.FindValue(header, HeaderKeys.Reference)?.Value;
        return new ChannelFacts
        {
            Code = HeaderText.FindValue(header, HeaderKeys.ChannelCode) is { } code ? CodeText(code.Value) : null,
            Unit = HeaderText.FindValue(header, HeaderKeys.Unit)?.Value ?? "",
            FilterClass = HeaderText.FindValue(header, HeaderKeys.FilterClass)?.Value,
            AmplitudeClass = Number(header, HeaderKeys.AmplitudeClass),
            Interval = Number(header, HeaderKeys.Interval),
            FirstSample = Number(header, HeaderKeys.FirstSample),
            CountEntry = HeaderText.FindValue(header, HeaderKeys.Count),
            TimesFrom = HeaderKeys.Explicit.Equals(reference, StringComparison.OrdinalIgnoreCase)
                ? CodeText(HeaderText.FindValue(header, HeaderKeys.ReferenceName)?.Value ?? "")
                : null,
        };
    }

    /// <summary>A code as it is kept: upper case, without surrounding blanks, cut where it is absurdly long.</summary>
    public static string CodeText(string written)
    {
        var code = written.Trim().ToUpperInvariant();
        return code.Length > LongestCode ? code[..LongestCode] : code;
    }

    private static HeaderNumber Number(IReadOnlyList<HeaderEntry> header, string key)
    {
        if (HeaderText.FindValue(header, key) is not { } entry)
        {
            return default;
        }

        return NumberText.TryParse(entry.Value, out var value, out var comma) ? new(entry, value, comma) : new(entry, null, false);
    }
}
