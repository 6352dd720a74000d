namespace Toepan.Api.Packages.Attachments;

/// <summary>A readable stream whose disposal leaves the one beneath open.</summary>
internal sealed class Unowned(Stream inner) : Stream
{
    public override bool CanRead => true;
    public override bool CanSeek => false;
    public override bool CanWrite => false;
    public override long Length => inner.Length;

    public override long Position
    {
        get => inner.Position;
        set => throw new NotSupportedException("It is read forward.");
    }

    public override int Read(byte[] buffer, int offset, int count) => inner.Read(buffer, offset, count);

    public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) => inner.ReadAsync(buffer, cancellationToken);

    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        inner.ReadAsync(buffer, offset, count, cancellationToken);

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException("It is read forward.");

    public override void SetLength(long value) => throw new NotSupportedException("It is only read.");

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException("It is only read.");
}
