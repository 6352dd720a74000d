using System.Buffers.Binary;
using System.IO.Compression;
using System.IO.Hashing;
using System.Text;

namespace Toepan.Domain.Tests.Packages;

/// <summary>One entry as it will stand in the archive; every claim can be a lie.</summary>
internal sealed record RawEntry(byte[] Name, byte[] Content)
{
    public RawEntry(string name, string content)
        : this(Encoding.UTF8.GetBytes(name), Encoding.UTF8.GetBytes(content))
    {
    }

    public RawEntry(string name, byte[] content)
        : this(Encoding.UTF8.GetBytes(name), content)
    {
    }

    public ushort Flags { get; init; }

    public ushort Method { get; init; } = 8;

    /// <summary>Unix mode, the high half of the external attributes.</summary>
    public ushort Mode { get; init; }

    public byte DosAttributes { get; init; }

    /// <summary>Packed bytes where they are not the content's.</summary>
    public byte[]? Packed { get; init; }

    public uint? ClaimedCrc { get; init; }

    public uint? ClaimedSize { get; init; }

    /// <summary>Name in the local header where it differs.</summary>
    public byte[]? LocalName { get; init; }

    /// <summary>Points the central record at the header of an earlier entry and writes nothing.</summary>
    public int? ShareWith { get; init; }

    public ushort Disk { get; init; }

    /// <summary>Writes sizes and offset in a ZIP64 extra field.</summary>
    public bool Zip64 { get; init; }
}

/// <summary>
/// Writes zips byte by byte after PKWARE's APPNOTE, so that a test can say exactly what is wrong with one. Independent of the code under test
/// and of the library that reads honest zips.
/// </summary>
internal static class RawZip
{
    public static byte[] Of(IReadOnlyList<RawEntry> entries, int? claimedCount = null, string comment = "")
    {
        using var zip = new MemoryStream();
        using var directory = new MemoryStream();
        var offsets = new List<long>();
        foreach (var entry in entries)
        {
            var packed = entry.Packed ?? (entry.Method == 8 ? Deflate(entry.Content) : entry.Content);
            var crc = entry.ClaimedCrc ?? Crc32.HashToUInt32(entry.Content);
            var size = entry.ClaimedSize ?? (uint)entry.Content.Length;
            var offset = entry.ShareWith is { } shared ? offsets[shared] : zip.Position;
            offsets.Add(offset);
            if (entry.ShareWith is null)
            {
                var localName = entry.LocalName ?? entry.Name;
                Put(zip, 0x04034b50u, (ushort)20, entry.Flags, entry.Method, 0u, crc, (uint)packed.Length, size, (ushort)localName.Length, (ushort)0);
                zip.Write(localName);
                zip.Write(packed);
            }

            var extra = entry.Zip64 ? Zip64Extra(size, packed.Length, offset) : [];
            var (plainSize, plainPacked, plainOffset) = entry.Zip64 ? (uint.MaxValue, uint.MaxValue, uint.MaxValue) : (size, (uint)packed.Length, (uint)offset);
            Put(
                directory, 0x02014b50u, (ushort)(3 << 8 | 20), (ushort)20, entry.Flags, entry.Method, 0u, crc, plainPacked, plainSize, (ushort)entry.Name.Length,
                (ushort)extra.Length, (ushort)0, entry.Disk, (ushort)0, (uint)entry.Mode << 16 | entry.DosAttributes, plainOffset);
            directory.Write(entry.Name);
            directory.Write(extra);
        }

        var start = zip.Position;
        zip.Write(directory.ToArray());
        var entryCount = claimedCount ?? entries.Count;
        if (entryCount >= ushort.MaxValue)
        {
            Zip64End(zip, entryCount, directory.Length, start);
        }

        var count = (ushort)Math.Min(entryCount, ushort.MaxValue);
        Put(zip, 0x06054b50u, (ushort)0, (ushort)0, count, count, (uint)directory.Length, (uint)start, (ushort)comment.Length);
        zip.Write(Encoding.ASCII.GetBytes(comment));
        return zip.ToArray();
    }

    public static byte[] Deflate(byte[] content)
    {
        using var packed = new MemoryStream();
        using (var deflate = new DeflateStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            deflate.Write(content);
        }

        return packed.ToArray();
    }

    private static void Zip64End(MemoryStream zip, int count, long length, long start)
    {
        var end = zip.Position;
        Put(zip, 0x06064b50u, 44ul, (ushort)45, (ushort)45, 0u, 0u, (ulong)count, (ulong)count, (ulong)length, (ulong)start);
        Put(zip, 0x07064b50u, 0u, (ulong)end, 1u);
    }

    private static byte[] Zip64Extra(long size, long packed, long offset)
    {
        using var extra = new MemoryStream();
        Put(extra, (ushort)1, (ushort)24, (ulong)size, (ulong)packed, (ulong)offset);
        return extra.ToArray();
    }

    private static void Put(Stream to, params object[] values)
    {
        Span<byte> bytes = stackalloc byte[8];
        foreach (var value in values)
        {
            switch (value)
            {
                case ushort two:
                    BinaryPrimitives.WriteUInt16LittleEndian(bytes, two);
                    to.Write(bytes[..2]);
                    break;
                case uint four:
                    BinaryPrimitives.WriteUInt32LittleEndian(bytes, four);
                    to.Write(bytes[..4]);
                    break;
                case ulong eight:
                    BinaryPrimitives.WriteUInt64LittleEndian(bytes, eight);
                    to.Write(bytes);
                    break;
                default:
                    throw new ArgumentException($"no field width for {value.GetType()}", nameof(values));
            }
        }
    }
}
