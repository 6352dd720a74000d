using Toepan.Api.Security;

namespace Toepan.Api.Packages;

/// <summary>Packages in, and out again.</summary>
public sealed class PackageService
{
    /// <summary>Reads, computes and stores one package: wholly or not at all. Engineers, managers and administrators.</summary>
    /// <param name="zip">The archive; read once, forward only.</param>
    public Task<Outcome<UploadResult>> Upload(Viewer viewer, Stream zip, UploadOptions options, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    /// <summary>The current package of a run, byte for byte as uploaded. The caller disposes the stream.</summary>
    public Task<Outcome<PackageDownload>> Download(Viewer viewer, string test, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    /// <summary>The current package written anew as ISO/TS 13499; re-uploading it gives the same measures. The caller disposes the stream.</summary>
    public Task<Outcome<PackageDownload>> Export(Viewer viewer, string test, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
