using System.IO.Compression;
using Toepan.Domain.Packages.Archive;

namespace Toepan.Domain.Packages.Writing;

/// <summary>Writes entries with fixed timestamps and modes, so that the same content gives the same bytes.</summary>
internal sealed class ZipWriter(Stream destination, string? topFolder) : IDisposable
{
    /// <summary>
    /// Text that packs better than this is stored instead: a dead channel packs some 400 to 1, and an archive of such would break the reader's
    /// limit on the ratio.
    /// </summary>
    private const int BestRatio = 50;

    /// <summary>Regular file, readable by all, writable by its owner.</summary>
    private const int UnixMode = 0x81A4 << 16;

    /// <summary>The first time a zip entry can have.</summary>
    private static readonly DateTimeOffset Timestamp = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private readonly ZipArchive zip = new(destination, ZipArchiveMode.Create, leaveOpen: true);
    private readonly HashSet<string> taken = [];

    public void Add(string name, byte[] bytes)
    {
        using var entry = Open(name, PacksTooWell(bytes) ? CompressionLevel.NoCompression : CompressionLevel.Optimal);
        entry.Write(bytes);
    }

    /// <summary>Adds bytes as they are, not packed: photographs and films are packed already.</summary>
    public void Add(string name, Stream content)
    {
        using var entry = Open(Free(name), CompressionLevel.NoCompression);
        content.CopyTo(entry);
    }

    public void Dispose() => zip.Dispose();

    private Stream Open(string name, CompressionLevel level)
    {
        taken.Add(EntryNames.Key(name));
        var entry = zip.CreateEntry(topFolder is null ? name : $"{topFolder}/{name}", level);
        entry.LastWriteTime = Timestamp;
        entry.ExternalAttributes = UnixMode;
        return entry.Open();
    }

    // An attachment never takes the place of a file of the package itself.
    private string Free(string name)
    {
        while (taken.Contains(EntryNames.Key(name)))
        {
            name = $"Document/{name.Replace('/', '_')}";
        }

        return name;
    }

    private static bool PacksTooWell(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var deflate = new DeflateStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            deflate.Write(bytes);
        }

        return bytes.Length > BestRatio * packed.Length;
    }
}
