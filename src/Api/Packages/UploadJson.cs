using Toepan.Domain.Packages;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Packages;

/// <summary>What an upload came to, as the contract writes it.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Created">Whether this upload stored it (of a dry run: would have).</param>
/// <param name="Sha256">SHA-256 of the bytes.</param>
/// <param name="Valid">Whether the run is valid.</param>
/// <param name="Problems">Problems found, with file and line.</param>
/// <param name="Overall">Overall level, or null where not rated.</param>
/// <param name="NotRated">Why not, or null.</param>
/// <param name="DryRun">True where nothing was stored because only a trial was asked for.</param>
public sealed record UploadJson(
    string Test, bool Created, string Sha256, bool Valid, IReadOnlyList<Problem> Problems, ProtectionLevel? Overall, string? NotRated, bool DryRun)
{
    public static UploadJson Of(UploadResult result) => new(
        result.Test, result.Created, result.Sha256, result.Valid, result.Problems, result.Overall, result.NotRated, result.DryRun);
}
