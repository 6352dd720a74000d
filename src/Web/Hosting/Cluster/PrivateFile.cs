namespace Toepan.Web.Hosting.Cluster;

/// <summary>Files only their owner may read.</summary>
internal static class PrivateFile
{
    /// <summary>Writes a file that must not exist yet, mode 0600, and flushes it to disk.</summary>
    public static void WriteNew(string path, string text)
    {
        using var stream = new FileStream(path, new FileStreamOptions
        {
            Mode = FileMode.CreateNew, Access = FileAccess.Write, UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
        });
        stream.Write(System.Text.Encoding.UTF8.GetBytes(text));
        stream.Flush(flushToDisk: true);
    }
}
