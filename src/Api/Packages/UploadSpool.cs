using System.Security.Cryptography;
using Microsoft.Extensions.Options;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages;

/// <summary>
/// Temporary files. A file loses its name as soon as it is open (where the system allows it), so that nothing remains of it
/// however the process ends; names left over by a crash between the two are removed when the next process begins to receive.
/// </summary>
public sealed class UploadSpool
{
    private const string Pattern = "upload-*.tmp";
    private const int BufferSize = 1 << 16;
    private readonly string directory;
    private readonly long maxBytes;

    public UploadSpool(IOptions<UploadSettings> settings, PackageLimits limits)
    {
        directory = settings.Value.Directory;
        maxBytes = limits.MaxBytes;
        Directory.CreateDirectory(directory);
        RemoveLeftovers();
    }

    /// <summary>Receives a stream to its end while hashing; null where it is longer than the limit.</summary>
    public Task<SpooledUpload?> Receive(Stream source, CancellationToken cancellation) => Receive(source, maxBytes, cancellation);

    /// <summary>The same with a limit of its own.</summary>
    public async Task<SpooledUpload?> Receive(Stream source, long mostBytes, CancellationToken cancellation)
    {
        var file = Create();
        try
        {
            using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            var buffer = new byte[BufferSize];
            for (int read; (read = await source.ReadAsync(buffer, cancellation)) > 0;)
            {
                if (file.Length + read > mostBytes)
                {
                    await file.DisposeAsync();
                    return null;
                }

                hash.AppendData(buffer, 0, read);
                await file.WriteAsync(buffer.AsMemory(0, read), cancellation);
            }

            await file.FlushAsync(cancellation);
            file.Position = 0;
            return new SpooledUpload(file, Convert.ToHexStringLower(hash.GetHashAndReset()));
        }
        catch
        {
            await file.DisposeAsync();
            throw;
        }
    }

    /// <summary>An empty temporary file that is gone when the stream is disposed.</summary>
    public FileStream Create()
    {
        var path = Path.Combine(directory, $"upload-{Guid.CreateVersion7():N}.tmp");
        var nameless = !OperatingSystem.IsWindows();
        var file = new FileStream(path, new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.ReadWrite,
            Share = FileShare.Delete,
            BufferSize = BufferSize,
            Options = nameless ? FileOptions.Asynchronous : FileOptions.Asynchronous | FileOptions.DeleteOnClose,
        });
        if (nameless)
        {
            File.Delete(path);
        }

        return file;
    }

    private void RemoveLeftovers()
    {
        foreach (var path in Directory.EnumerateFiles(directory, Pattern))
        {
            try
            {
                File.Delete(path);
            }
            catch (IOException)
            {
                // Windows: another process of this service still holds it, and will remove it itself.
            }
        }
    }
}

/// <summary>Bytes received, at position 0, and their SHA-256 in lower-case hex. Disposing removes them.</summary>
public sealed record SpooledUpload(FileStream File, string Sha256) : IAsyncDisposable
{
    public ValueTask DisposeAsync() => File.DisposeAsync();
}
