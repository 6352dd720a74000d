namespace Toepan.Domain.Packages.Archive;

/// <summary>One file of the archive, as the central directory states it. Sizes are claims until the bytes have been measured.</summary>
/// <param name="FullName">Name in the archive, with top folder.</param>
/// <param name="Name">Name without top folder; how the package knows it.</param>
/// <param name="Deflated">Deflated, else stored.</param>
/// <param name="Crc">CRC-32 of the expanded bytes.</param>
/// <param name="PackedBytes">Packed size.</param>
/// <param name="Bytes">Claimed expanded size.</param>
/// <param name="DataOffset">Where its packed bytes begin.</param>
internal sealed record ZipEntry(string FullName, string Name, bool Deflated, uint Crc, long PackedBytes, long Bytes, long DataOffset)
{
    /// <summary>Last segment of the name.</summary>
    public string FileName => Name[(Name.LastIndexOf('/') + 1)..];

    /// <summary>Folder of the name, without the closing slash; empty at the root.</summary>
    public string Folder => Name.LastIndexOf('/') is var cut and >= 0 ? Name[..cut] : "";

    /// <summary>Last extension with its dot, or empty.</summary>
    public string Extension => Path.GetExtension(FileName);

    public bool IsIn(string folder) => Folder.Equals(folder, StringComparison.OrdinalIgnoreCase);

    public bool HasExtension(string extension) => Extension.Equals(extension, StringComparison.OrdinalIgnoreCase);
}
