using Toepan.Domain.Measures;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Programme;

/// <summary>The procedure editions and rating schemes this program carries as data files, and the schemes brought since.</summary>
/// <param name="Procedures">Procedure editions by key.</param>
/// <param name="Schemes">Schemes, the default one first.</param>
public sealed record ProgrammeRules(IReadOnlyDictionary<string, ProcedureEdition> Procedures, IReadOnlyList<Scheme> Schemes)
{
    /// <summary>The rules this version of the program carries.</summary>
    public static ProgrammeRules Carried => new(
        ProcedureLibrary.All.Select(edition => edition.Key).Distinct().ToDictionary(key => key, key => ProcedureLibrary.Find(key)!),
        [SchemeLibrary.Default, .. SchemeLibrary.All.Where(scheme => scheme.Key != SchemeLibrary.DefaultKey)]);

    /// <summary>The method editions this program can compute, the first one first.</summary>
    public IReadOnlyList<Methods> Methods { get; init; } = Domain.Measures.Methods.Carried;

    /// <summary>Schemes brought since, and which one rates; empty until the store has been asked.</summary>
    public SchemeShelf Shelf { get; } = new();

    /// <summary>The scheme that rates new uploads, as last heard of the store.</summary>
    public Scheme DefaultScheme => Shelf.Default ?? Schemes[0];

    /// <summary>The edition of a known procedure that a run of that day is judged by.</summary>
    public ProcedureEdition Procedure(string key, DateOnly day) => Procedures[key] is var latest && latest.InForceFrom <= day
        ? latest
        : ProcedureLibrary.InForce(key, day) ?? latest;

    /// <summary>The method edition of that word.</summary>
    public Methods MethodsOf(string edition) => Methods.FirstOrDefault(methods => methods.Edition == edition)
        ?? throw new InvalidOperationException($"This program cannot compute method edition {edition}; it has {string.Join(", ", Methods.Select(methods => methods.Edition))}.");

    /// <summary>The scheme of a key, or null.</summary>
    public Scheme? FindScheme(string key) => Shelf.Find(key) ?? Schemes.FirstOrDefault(scheme => scheme.Key == key);
}
