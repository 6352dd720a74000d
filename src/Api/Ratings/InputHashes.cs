using System.Security.Cryptography;
using System.Text;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;

namespace Toepan.Api.Ratings;

/// <summary>
/// What a rating was made from, each by its SHA-256: two ratings with the same four hashes are the same rating, and anybody can check that a
/// figure came from what is stored.
/// </summary>
/// <param name="Package">The package as uploaded.</param>
/// <param name="Measures">The reduction's measures: the JSON of the list as it is stored.</param>
/// <param name="Findings">The findings that counted, likewise.</param>
/// <param name="Scheme">The scheme document, byte for byte; null of ratings made before documents were kept.</param>
public sealed record InputHashes(string Package, string Measures, string Findings, string? Scheme)
{
    public static string Of(IReadOnlyList<Measure> measures) => Sha256(StoredJson.Write(measures));

    public static string Of(IReadOnlyList<Finding> findings) => Sha256(StoredJson.Write(findings));

    private static string Sha256(string json) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(json)));
}
