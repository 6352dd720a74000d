namespace Toepan.Domain.Programme;

/// <summary>The procedure editions this version of the programme carries; data files under Programme/Data.</summary>
public static class ProcedureLibrary
{
    private const string Folder = "Programme/Data/";

    /// <summary>Every edition, by key and edition.</summary>
    public static IReadOnlyList<ProcedureEdition> All { get; } = [.. Load().OrderBy(p => p.Key, StringComparer.Ordinal).ThenBy(p => p.Edition)];

    /// <summary>The latest edition of a procedure, or null where the key is unknown.</summary>
    public static ProcedureEdition? Find(string key) => All.LastOrDefault(p => p.Key == key);

    /// <summary>One edition, or null.</summary>
    public static ProcedureEdition? Find(string key, int edition) => All.FirstOrDefault(p => p.Key == key && p.Edition == edition);

    /// <summary>The edition a run of that day was made under: the latest in force by then, the first where none was yet; null where the key is unknown.</summary>
    public static ProcedureEdition? InForce(string key, DateOnly day) => InForce(All.Where(p => p.Key == key), day);

    /// <summary>The same among editions of one procedure.</summary>
    public static ProcedureEdition? InForce(IEnumerable<ProcedureEdition> editions, DateOnly day)
    {
        var ordered = editions.OrderBy(edition => edition.Edition).ToList();
        return ordered.LastOrDefault(edition => edition.InForceFrom <= day) ?? ordered.FirstOrDefault();
    }

    /// <summary>The edition that a reduction names as <c>key-edition</c>, or null.</summary>
    public static ProcedureEdition? Named(string keyAndEdition) => All.FirstOrDefault(p => $"{p.Key}-{p.Edition}" == keyAndEdition);

    private static IEnumerable<ProcedureEdition> Load()
    {
        var assembly = typeof(ProcedureLibrary).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal)))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            yield return ProcedureReader.Read(stream);
        }
    }
}
