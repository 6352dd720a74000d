using Microsoft.EntityFrameworkCore;
using Npgsql;
using NpgsqlTypes;
using Toepan.Api.Channels.Tables;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages;

/// <summary>A package to rows and back, nothing lost.</summary>
internal static class PackageArchive
{
    private const string CopyChunks = "COPY lab.package_chunk (package_sha256, number, bytes) FROM STDIN (FORMAT BINARY)";

    /// <summary>Writes a package with everything it brings. The context is in a transaction; the run exists.</summary>
    public static async Task Write(ProgrammeDb context, IncomingPackage incoming, string by, DateTimeOffset at, CancellationToken cancellation)
    {
        var (sha256, package) = (incoming.Upload.Sha256, incoming.Package);
        context.Add(Row(incoming, by, at));
        await context.SaveChangesAsync(cancellation);
        context.AddRange(package.Points.Select((point, number) => StructuralPointRow.From(sha256, number, point)));
        context.AddRange(package.Clearances.Select((clearance, number) => ClearanceRow.From(sha256, number, clearance)));
        context.AddRange(package.Findings.Select((finding, number) => FindingRow.From(sha256, number, finding)));
        await context.SaveChangesAsync(cancellation);
        await WriteChannels(context, sha256, package.Channels, cancellation);
        await WriteChunks(context, incoming.Upload, cancellation);
    }

    /// <summary>The package as it was read; what people changed of its findings is <see cref="RunFindings"/>' business.</summary>
    public static async Task<TestPackage> Read(ProgrammeDb context, string sha256, CancellationToken cancellation)
    {
        var row = await context.Set<PackageRow>().AsNoTracking().SingleAsync(package => package.Sha256 == sha256, cancellation);
        var channels = await context.Set<ChannelRow>().AsNoTracking()
            .Where(channel => channel.PackageSha256 == sha256).OrderBy(channel => channel.Ordinal).ToListAsync(cancellation);
        var points = await context.Set<StructuralPointRow>().AsNoTracking()
            .Where(point => point.PackageSha256 == sha256).OrderBy(point => point.Number).ToListAsync(cancellation);
        var clearances = await context.Set<ClearanceRow>().AsNoTracking()
            .Where(clearance => clearance.PackageSha256 == sha256).OrderBy(clearance => clearance.Number).ToListAsync(cancellation);
        var findings = await context.Set<FindingRow>().AsNoTracking()
            .Where(finding => finding.PackageSha256 == sha256).OrderBy(finding => finding.Number).ToListAsync(cancellation);
        return new TestPackage
        {
            Programme = StoredJson.Read<ProgrammeDocument>(row.Programme),
            TestHeader = StoredJson.Read<HeaderEntry[]>(row.TestHeader),
            IndexHeader = StoredJson.Read<HeaderEntry[]>(row.IndexHeader),
            Channels = channels.ConvertAll(channel => channel.ToChannel()),
            Points = points.ConvertAll(point => point.ToPoint()),
            Clearances = clearances.ConvertAll(clearance => clearance.ToClearance()),
            Findings = findings.ConvertAll(finding => finding.ToFinding()),
            Films = StoredJson.Read<FilmTiming[]>(row.Films),
            Attachments = StoredJson.Read<Attachment[]>(row.Attachments),
            TopFolder = row.TopFolder,
            ContentSha256 = row.ContentSha256,
        };
    }

    private static PackageRow Row(IncomingPackage incoming, string by, DateTimeOffset at) => new()
    {
        Sha256 = incoming.Upload.Sha256,
        Test = incoming.Package.Programme.Test,
        ContentSha256 = incoming.Package.ContentSha256,
        Length = incoming.Upload.File.Length,
        TopFolder = incoming.Package.TopFolder,
        Programme = StoredJson.Write(incoming.Package.Programme),
        TestHeader = StoredJson.Write(incoming.Package.TestHeader),
        IndexHeader = StoredJson.Write(incoming.Package.IndexHeader),
        Films = StoredJson.Write(incoming.Package.Films),
        Attachments = StoredJson.Write(incoming.Package.Attachments),
        Problems = StoredJson.Write(incoming.Problems),
        UploadedAt = at,
        UploadedBy = by,
    };

    // A row at a time, so that a large package is never in memory twice.
    private static async Task WriteChannels(
        ProgrammeDb context, string sha256, IReadOnlyList<RecordedChannel> channels, CancellationToken cancellation)
    {
        for (var ordinal = 0; ordinal < channels.Count; ordinal++)
        {
            context.Add(ChannelRow.From(sha256, ordinal, channels[ordinal]));
            if (ordinal % ChannelsAtOnce == ChannelsAtOnce - 1)
            {
                await context.SaveChangesAsync(cancellation);
                context.ChangeTracker.Clear();
            }
        }

        await context.SaveChangesAsync(cancellation);
        context.ChangeTracker.Clear();
    }

    private const int ChannelsAtOnce = 32;

    private static async Task WriteChunks(ProgrammeDb context, SpooledUpload upload, CancellationToken cancellation)
    {
        upload.File.Position = 0;
        var buffer = new byte[PackageChunkRow.Size];
        var connection = (NpgsqlConnection)context.Database.GetDbConnection();
        await using var copy = await connection.BeginBinaryImportAsync(CopyChunks, cancellation);
        for (var number = 0; ; number++)
        {
            var read = await upload.File.ReadAtLeastAsync(buffer, buffer.Length, throwOnEndOfStream: false, cancellation);
            if (read == 0)
            {
                break;
            }

            await copy.StartRowAsync(cancellation);
            await copy.WriteAsync(upload.Sha256, NpgsqlDbType.Text, cancellation);
            await copy.WriteAsync(number, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(buffer.AsMemory(0, read), NpgsqlDbType.Bytea, cancellation);
        }

        await copy.CompleteAsync(cancellation);
    }
}

/// <summary>A package received and read, with the reader's problems.</summary>
internal sealed record IncomingPackage(SpooledUpload Upload, TestPackage Package, IReadOnlyList<Problem> Problems);
