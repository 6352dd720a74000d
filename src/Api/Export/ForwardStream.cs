namespace Toepan.Api.Export;

/// <summary>
/// Lets a writer that asks for its position, and may write without waiting, write to a response: counts the bytes, keeps what was written without waiting until the
/// next flush, and passes it on then.
/// </summary>
internal sealed class ForwardStream(Stream target) : Stream
{
    private readonly MemoryStream kept = new();
    private long written;

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => written;

    public override long Position
    {
        get => written;
        set => throw new NotSupportedException("A response is written forward only.");
    }

    public override void Flush()
    {
        // What is kept is passed on by the next FlushAsync: a response must not be written without waiting.
    }

    public override async Task FlushAsync(CancellationToken cancellationToken)
    {
        if (kept.Length > 0)
        {
            await target.WriteAsync(kept.GetBuffer().AsMemory(0, (int)kept.Length), cancellationToken);
            kept.SetLength(0);
        }

        await target.FlushAsync(cancellationToken);
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        kept.Write(buffer);
        written += buffer.Length;
    }

    public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        WriteAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

    public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
    {
        Write(buffer.Span);
        return ValueTask.CompletedTask;
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException("A response is not read.");

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException("A response is written forward only.");

    public override void SetLength(long value) => throw new NotSupportedException("A response is written forward only.");

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            kept.Dispose();
        }

        base.Dispose(disposing);
    }
}
