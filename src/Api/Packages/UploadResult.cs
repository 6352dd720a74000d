using Toepan.Domain.Packages;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Packages;

/// <summary>How to take a package in.</summary>
/// <param name="DryRun">Say what would be, store nothing.</param>
/// <param name="Replaces">SHA-256 of the stored package this one replaces, or null.</param>
/// <param name="Reason">Why it replaces it; required with <paramref name="Replaces"/>.</param>
public sealed record UploadOptions(bool DryRun = false, string? Replaces = null, string? Reason = null);

/// <summary>What an upload came to.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Created">Whether this upload stored it (of a dry run: whether it would have).</param>
/// <param name="Sha256">Lower-case hex SHA-256 of the bytes.</param>
/// <param name="Valid">Whether the run is valid.</param>
/// <param name="Problems">The reader's problems, then the reduction's.</param>
/// <param name="Overall">Overall level, or null.</param>
/// <param name="NotRated">Why there is none, or null.</param>
/// <param name="DryRun">Whether nothing was stored because nothing was to be.</param>
public sealed record UploadResult(
    string Test, bool Created, string Sha256, bool Valid, IReadOnlyList<Problem> Problems, ProtectionLevel? Overall, string? NotRated, bool DryRun);

/// <summary>A package to send.</summary>
public sealed record PackageDownload(string FileName, string? Sha256, long? Length, Stream Content);
