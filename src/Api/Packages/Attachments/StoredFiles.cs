using Microsoft.EntityFrameworkCore;
using Npgsql;
using NpgsqlTypes;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Packages;
using Toepan.Domain.Packages.Films;

namespace Toepan.Api.Packages.Attachments;

/// <summary>Files under their SHA-256, in chunks: byte for byte in, byte for byte out.</summary>
internal static class StoredFiles
{
    private const string CopyChunks = "COPY lab.stored_file_chunk (file_sha256, number, bytes) FROM STDIN (FORMAT BINARY)";

    /// <summary>Stores a file unless its bytes are there; true where they were not. The context is in a transaction.</summary>
    /// <param name="open">Opens the bytes, to be read forward once.</param>
    /// <param name="file">What is known of them.</param>
    public static async Task<bool> Write(ProgrammeDb context, FileToStore file, Func<Stream> open, DateTimeOffset at, CancellationToken cancellation)
    {
        // Of two that store the same bytes at once the second waits here for the first, then finds them.
        var added = await context.Database.ExecuteSqlAsync(
            $"INSERT INTO lab.stored_file (sha256, length, media_type, frames_per_second, stored_at) VALUES ({file.Sha256}, {file.Length}, {file.MediaType}, {file.FramesPerSecond}, {at}) ON CONFLICT DO NOTHING",
            cancellation);
        if (added > 0)
        {
            await using var content = open();
            await WriteChunks(context, file.Sha256, content, cancellation);
        }

        return added > 0;
    }

    /// <summary>The bytes as a seekable stream; the caller disposes it.</summary>
    public static ChunkStream Open(ProgrammeDb context, string sha256, long length) => new(
        context, number => context.Set<StoredFileChunkRow>().Where(row => row.FileSha256 == sha256 && row.Number == number).Select(row => row.Bytes), length);

    private static async Task WriteChunks(ProgrammeDb context, string sha256, Stream content, CancellationToken cancellation)
    {
        var buffer = new byte[PackageChunkRow.Size];
        var connection = (NpgsqlConnection)context.Database.GetDbConnection();
        await using var copy = await connection.BeginBinaryImportAsync(CopyChunks, cancellation);
        for (var number = 0; ; number++)
        {
            var read = await content.ReadAtLeastAsync(buffer, buffer.Length, throwOnEndOfStream: false, cancellation);
            if (read == 0)
            {
                break;
            }

            await copy.StartRowAsync(cancellation);
            await copy.WriteAsync(sha256, NpgsqlDbType.Text, cancellation);
            await copy.WriteAsync(number, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(buffer.AsMemory(0, read), NpgsqlDbType.Bytea, cancellation);
        }

        await copy.CompleteAsync(cancellation);
    }
}

/// <summary>What is known of a file before it is stored.</summary>
internal sealed record FileToStore(string Sha256, long Length, string MediaType, double? FramesPerSecond)
{
    /// <summary>Looks at a seekable file; its position is the beginning afterwards.</summary>
    public static FileToStore Of(Stream file, string sha256)
    {
        var head = new byte[FileSignature.Length];
        file.Position = 0;
        var type = FileSignature.Of(head.AsSpan(0, file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false)));
        var rate = FilmRate.Of(file, type);
        file.Position = 0;
        return new(sha256, file.Length, type, rate);
    }
}
