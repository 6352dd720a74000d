namespace Toepan.Domain.Ratings;

/// <summary>The schemes this version of the programme carries; data files under Ratings/Data.</summary>
public static class SchemeLibrary
{
    /// <summary>Key of the scheme that rates on ingest until another is adopted.</summary>
    public const string DefaultKey = "offset-frontal-1";

    private const string Folder = "Ratings/Data/";

    /// <summary>Every scheme document as the program carries it, by key.</summary>
    public static IReadOnlyList<CarriedScheme> Documents { get; } = [.. Load().OrderBy(carried => carried.Scheme.Key, StringComparer.Ordinal)];

    /// <summary>Every scheme, by key.</summary>
    public static IReadOnlyList<Scheme> All { get; } = [.. Documents.Select(carried => carried.Scheme)];

    /// <summary>The scheme that rates on ingest until another is adopted.</summary>
    public static Scheme Default { get; } = Find(DefaultKey)!;

    /// <summary>The scheme of a key, or null.</summary>
    public static Scheme? Find(string key) => All.FirstOrDefault(scheme => scheme.Key == key);

    private static IEnumerable<CarriedScheme> Load()
    {
        var assembly = typeof(SchemeLibrary).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal)))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            bytes.Position = 0;
            var reading = SchemeReader.Read(bytes, name);
            yield return new(
                reading.Scheme ?? throw new InvalidOperationException(string.Join(Environment.NewLine, reading.Problems.Select(p => $"{p.File}:{p.Line} {p.Message}"))),
                name[Folder.Length..], bytes.ToArray());
        }
    }
}

/// <summary>A scheme with its document.</summary>
/// <param name="File">File name.</param>
/// <param name="Bytes">The document, byte for byte.</param>
public sealed record CarriedScheme(Scheme Scheme, string File, ReadOnlyMemory<byte> Bytes);
