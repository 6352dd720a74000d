using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Programme;

/// <summary>The procedure editions and rating schemes this program carries as data files.</summary>
/// <param name="Procedures">Procedure editions by key.</param>
/// <param name="Schemes">Schemes, the default one first.</param>
public sealed record ProgrammeRules(IReadOnlyDictionary<string, ProcedureEdition> Procedures, IReadOnlyList<Scheme> Schemes)
{
    /// <summary>The rules this version of the program carries.</summary>
    public static ProgrammeRules Carried { get; } = new(
        ProcedureLibrary.All.Select(edition => edition.Key).Distinct().ToDictionary(key => key, key => ProcedureLibrary.Find(key)!),
        [SchemeLibrary.Default, .. SchemeLibrary.All.Where(scheme => scheme.Key != SchemeLibrary.DefaultKey)]);

    public Scheme DefaultScheme => Schemes[0];

    /// <summary>The edition of a known procedure that a run of that day is judged by.</summary>
    public ProcedureEdition Procedure(string key, DateOnly day) => Procedures[key] is var latest && latest.InForceFrom <= day
        ? latest
        : ProcedureLibrary.InForce(key, day) ?? latest;

    /// <summary>The scheme of a key, or null.</summary>
    public Scheme? FindScheme(string key) => Schemes.FirstOrDefault(scheme => scheme.Key == key);
}
