namespace Toepan.Domain.Packages.Iso13499;

/// <summary>Header lines of ISO/TS 13499: descriptor, padded with blanks to 28 characters, colon, value (standards from memory).</summary>
internal static class HeaderText
{
    /// <summary>What stands for a missing value.</summary>
    public const string NoValue = "NOVALUE";

    /// <summary>Column the colon stands in when written.</summary>
    public const int KeyWidth = 28;

    /// <summary>Splits at the first colon. A line without one becomes an entry with an empty key, so that nothing is lost.</summary>
    public static HeaderEntry Parse(string line, int number)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        return colon < 0
            ? new HeaderEntry("", line.Trim(), number)
            : new HeaderEntry(line[..colon].Trim(), line[(colon + 1)..].Trim(), number);
    }

    /// <summary>Keys are the same whatever their case and inner blanks.</summary>
    public static bool SameKey(string a, string b) =>
        a.Equals(b, StringComparison.OrdinalIgnoreCase) || Squeeze(a).Equals(Squeeze(b), StringComparison.OrdinalIgnoreCase);

    /// <summary>The first entry with a key, or null.</summary>
    public static HeaderEntry? Find(IReadOnlyList<HeaderEntry> header, string key)
    {
        foreach (var entry in header)
        {
            if (SameKey(entry.Key, key))
            {
                return entry;
            }
        }

        return null;
    }

    /// <summary>The first entry with a key that has a value: neither blank nor NOVALUE.</summary>
    public static HeaderEntry? FindValue(IReadOnlyList<HeaderEntry> header, string key) =>
        Find(header, key) is { } entry && HasValue(entry.Value) ? entry : null;

    public static bool HasValue(string value) => value.Length > 0 && !value.Equals(NoValue, StringComparison.OrdinalIgnoreCase);

    private static string Squeeze(string key) => string.Join(' ', key.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
