using System.IO.Compression;

namespace Toepan.Api.Tests.Packages;

/// <summary>Zips beyond what a laboratory would write.</summary>
internal static class TestZip
{
    /// <summary>The same zip with one more entry.</summary>
    public static byte[] With(byte[] zip, string name, byte[] content)
    {
        using var target = new MemoryStream();
        target.Write(zip);
        using (var archive = new ZipArchive(target, ZipArchiveMode.Update, leaveOpen: true))
        {
            using var entry = archive.CreateEntry(name, CompressionLevel.NoCompression).Open();
            entry.Write(content);
        }

        return target.ToArray();
    }
}
