using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Packages;

/// <summary>Stored bytes as a seekable stream that fetches one chunk at a time. Owns its context.</summary>
/// <param name="context">Context the chunks are read with.</param>
/// <param name="query">The chunk of a number.</param>
/// <param name="length">Bytes in all.</param>
internal sealed class ChunkStream(ProgrammeDb context, Func<int, IQueryable<byte[]>> query, long length) : Stream
{
    /// <summary>A stored package.</summary>
    public ChunkStream(ProgrammeDb context, string packageSha256, long length)
        : this(context, number => context.Set<PackageChunkRow>().Where(row => row.PackageSha256 == packageSha256 && row.Number == number).Select(row => row.Bytes), length)
    {
    }

    private byte[] chunk = [];
    private int chunkNumber = -1;
    private long position;

    public override bool CanRead => true;
    public override bool CanSeek => true;
    public override bool CanWrite => false;
    public override long Length => length;

    public override long Position
    {
        get => position;
        set => Seek(value, SeekOrigin.Begin);
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        if (Wanted(out var number))
        {
            chunk = query(number).Single();
            chunkNumber = number;
        }

        return Take(buffer);
    }

    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        if (Wanted(out var number))
        {
            chunk = await query(number).SingleAsync(cancellationToken);
            chunkNumber = number;
        }

        return Take(buffer.Span);
    }

    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

    public override long Seek(long offset, SeekOrigin origin)
    {
        var target = origin switch { SeekOrigin.Begin => offset, SeekOrigin.Current => position + offset, _ => length + offset };
        ArgumentOutOfRangeException.ThrowIfNegative(target, nameof(offset));
        return position = target;
    }

    public override void Flush()
    {
    }

    public override void SetLength(long value) => throw new NotSupportedException("Stored bytes cannot be changed.");

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException("Stored bytes cannot be changed.");

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            context.Dispose();
        }

        base.Dispose(disposing);
    }

    public override async ValueTask DisposeAsync()
    {
        await context.DisposeAsync();
        await base.DisposeAsync();
    }

    private bool Wanted(out int number)
    {
        number = (int)(position / PackageChunkRow.Size);
        return position < length && number != chunkNumber;
    }

    private int Take(Span<byte> buffer)
    {
        if (position >= length)
        {
            return 0;
        }

        var within = (int)(position % PackageChunkRow.Size);
        var count = Math.Min(buffer.Length, chunk.Length - within);
        chunk.AsSpan(within, count).CopyTo(buffer);
        position += count;
        return count;
    }
}
