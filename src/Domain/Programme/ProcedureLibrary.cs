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
