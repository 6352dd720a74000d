using Toepan.Domain.Packages.Iso13499;

namespace Toepan.Domain.Packages.Writing;

/// <summary>Header entries → ISO/TS 13499 lines. What cannot stand on a header line (line ends, a colon in a key) becomes a blank.</summary>
internal static class HeaderWriter
{
    public static string Lines(IEnumerable<HeaderEntry> entries) =>
        string.Concat(entries.Select(entry => $"{Key(entry.Key)}:{TextBytes.OneLine(entry.Value)}{TextBytes.LineEnd}"));

    /// <summary>The entries with one set: replaced where its key stands, added at the end otherwise.</summary>
    public static List<HeaderEntry> Set(IReadOnlyList<HeaderEntry> entries, string key, string value)
    {
        var all = entries.ToList();
        var at = all.FindIndex(entry => HeaderText.SameKey(entry.Key, key));
        if (at < 0)
        {
            all.Add(new HeaderEntry(key, value, 0));
        }
        else
        {
            all[at] = all[at] with { Value = value };
        }

        return all;
    }

    private static string Key(string key) => key.Length == 0 ? "" : TextBytes.OneLine(key).Replace(':', ' ').PadRight(HeaderText.KeyWidth);
}
