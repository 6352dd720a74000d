namespace Toepan.Domain.Packages.Archive;

/// <summary>A stretch of a seekable stream, read forward. Does not own the stream beneath.</summary>
internal sealed class SectionStream(Stream beneath, long offset, long length) : Stream
{
    private long read;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => length;

    public override long Position
    {
        get => read;
        set => throw new NotSupportedException();
    }

    public override int Read(Span<byte> buffer)
    {
        var wanted = (int)Math.Min(buffer.Length, length - read);
        if (wanted == 0)
        {
            return 0;
        }

        if (beneath.Position != offset + read)
        {
            beneath.Position = offset + read;
        }

        var got = beneath.Read(buffer[..wanted]);
        read += got;
        return got;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
