namespace Toepan.Domain.Ratings;

/// <summary>The schemes this version of the programme carries; data files under Ratings/Data.</summary>
public static class SchemeLibrary
{
    /// <summary>Key of the scheme that rates on ingest.</summary>
    public const string DefaultKey = "offset-frontal-1";

    private const string Folder = "Ratings/Data/";

    /// <summary>Every scheme, by key.</summary>
    public static IReadOnlyList<Scheme> All { get; } = [.. Load().OrderBy(scheme => scheme.Key, StringComparer.Ordinal)];

    /// <summary>The scheme that rates on ingest.</summary>
    public static Scheme Default { get; } = Find(DefaultKey)!;

    /// <summary>The scheme of a key, or null.</summary>
    public static Scheme? Find(string key) => All.FirstOrDefault(scheme => scheme.Key == key);

    private static IEnumerable<Scheme> Load()
    {
        var assembly = typeof(SchemeLibrary).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal)))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            var reading = SchemeReader.Read(stream, name);
            yield return reading.Scheme
                ?? throw new InvalidOperationException(string.Join(Environment.NewLine, reading.Problems.Select(p => $"{p.File}:{p.Line} {p.Message}")));
        }
    }
}
