using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages;

/// <summary>Packages out: as uploaded, or written anew.</summary>
public sealed class PackageDownloadService(IDbContextFactory<ProgrammeDb> contexts, UploadSpool spool)
{
    /// <summary>The current package of a run, byte for byte as uploaded. The caller disposes the stream.</summary>
    public async Task<Outcome<PackageDownload>> Download(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        return await Find(test, cancellation) is { } stored
            ? new PackageDownload($"{test}.zip", stored.Sha256, stored.Length, await Open(stored, cancellation))
            : Failure.NotFound("test", test);
    }

    /// <summary>The current package written anew as ISO/TS 13499, with the findings as they count; re-uploading it gives the same measures. The caller disposes the stream.</summary>
    public async Task<Outcome<PackageDownload>> Export(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        if (await Find(test, cancellation) is not { } stored)
        {
            return Failure.NotFound("test", test);
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var package = await RunFindings.Package(context, test, stored.Sha256, cancellation);
        await using var original = await Open(stored, cancellation);
        var attachments = new PackageAttachments(original);
        var file = spool.Create();
        PackageWriter.Write(file, package, attachments.Open);
        file.Position = 0;
        return new PackageDownload($"{test}-iso13499.zip", null, file.Length, file);
    }

    private async Task<StoredPackage?> Find(string test, CancellationToken cancellation)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await CurrentRun.Find(context, test, cancellation) is { } current
            ? await context.Set<PackageRow>()
                .Where(row => row.Sha256 == current.PackageSha256)
                .Select(row => new StoredPackage(row.Sha256, row.Length))
                .SingleAsync(cancellation)
            : null;
    }

    private async Task<ChunkStream> Open(StoredPackage stored, CancellationToken cancellation) =>
        new(await contexts.CreateDbContextAsync(cancellation), stored.Sha256, stored.Length);

    private sealed record StoredPackage(string Sha256, long Length);
}
