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

    /// <summary>The scheme of a key, or null.</summary>
    public Scheme? FindScheme(string key) => Schemes.FirstOrDefault(scheme => scheme.Key == key);
}
