using System.Net.Http.Headers;

namespace Toepan.Api.Tests.Packages.Attachments;

/// <summary>Attaching as a script does it.</summary>
internal static class AttachmentClient
{
    public static async Task<Answer> Attach(this HttpClient client, string path, byte[] bytes, string query = "", string type = "application/octet-stream")
    {
        using var body = new ByteArrayContent(bytes);
        body.Headers.ContentType = new MediaTypeHeaderValue(type);
        using var response = await client.PostAsync(path + query, body, TestContext.Current.CancellationToken);
        return await Answer.Of(response);
    }
}

/// <summary>Zeros of a length nobody is told beforehand; after some of them it does something once.</summary>
internal sealed class Endless(long length, long afterBytes = long.MaxValue, Action? then = null) : Stream
{
    private long given;

    public override bool CanRead => true;
    public override bool CanSeek => false;
    public override bool CanWrite => false;
    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => given;
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        var now = (int)Math.Min(count, length - given);
        given += now;
        if (given >= afterBytes)
        {
            then?.Invoke();
        }

        return now;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
