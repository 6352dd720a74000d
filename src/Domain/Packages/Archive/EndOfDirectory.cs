using System.Buffers.Binary;

namespace Toepan.Domain.Packages.Archive;

/// <summary>Where the central directory is and how many entries it claims (PKWARE APPNOTE 4.3.14 to 4.3.16).</summary>
internal readonly record struct EndOfDirectory(long Entries, long Offset, long Length, long Position)
{
    private const uint Signature = 0x06054b50;
    private const uint Zip64Signature = 0x06064b50;
    private const uint LocatorSignature = 0x07064b50;
    private const int FixedLength = 22;
    private const int LocatorLength = 20;
    private const int Zip64Length = 56;
    private const int MaxComment = ushort.MaxValue;

    /// <summary>Finds the record whose comment reaches to the very end of the archive, the last such one; null where there is none.</summary>
    public static EndOfDirectory? Find(Stream zip)
    {
        var length = (int)Math.Min(zip.Length, FixedLength + MaxComment);
        var tail = new byte[length];
        zip.Position = zip.Length - length;
        zip.ReadExactly(tail);
        for (var at = length - FixedLength; at >= 0; at--)
        {
            var record = tail.AsSpan(at);
            if (BinaryPrimitives.ReadUInt32LittleEndian(record) == Signature
                && BinaryPrimitives.ReadUInt16LittleEndian(record[20..]) == record.Length - FixedLength)
            {
                return Read(zip, record, zip.Length - length + at);
            }
        }

        return null;
    }

    private static EndOfDirectory? Read(Stream zip, ReadOnlySpan<byte> record, long position)
    {
        var plain = new EndOfDirectory(
            BinaryPrimitives.ReadUInt16LittleEndian(record[10..]), BinaryPrimitives.ReadUInt32LittleEndian(record[16..]),
            BinaryPrimitives.ReadUInt32LittleEndian(record[12..]), position);
        if (plain is { Entries: < ushort.MaxValue, Offset: < uint.MaxValue, Length: < uint.MaxValue })
        {
            var oneDisk = BinaryPrimitives.ReadUInt32LittleEndian(record[4..]) == 0
                && BinaryPrimitives.ReadUInt16LittleEndian(record[8..]) == plain.Entries;
            return oneDisk ? plain : null;
        }

        return ReadZip64(zip, position) ?? plain;
    }

    private static EndOfDirectory? ReadZip64(Stream zip, long position)
    {
        Span<byte> locator = stackalloc byte[LocatorLength];
        if (!TryReadAt(zip, position - LocatorLength, locator) || BinaryPrimitives.ReadUInt32LittleEndian(locator) != LocatorSignature)
        {
            return null;
        }

        var at = BinaryPrimitives.ReadInt64LittleEndian(locator[8..]);
        Span<byte> wide = stackalloc byte[Zip64Length];
        return TryReadAt(zip, at, wide) && BinaryPrimitives.ReadUInt32LittleEndian(wide) == Zip64Signature
            ? new EndOfDirectory(
                BinaryPrimitives.ReadInt64LittleEndian(wide[32..]), BinaryPrimitives.ReadInt64LittleEndian(wide[48..]),
                BinaryPrimitives.ReadInt64LittleEndian(wide[40..]), at)
            : null;
    }

    private static bool TryReadAt(Stream zip, long at, Span<byte> buffer)
    {
        if (at < 0 || at > zip.Length - buffer.Length)
        {
            return false;
        }

        zip.Position = at;
        zip.ReadExactly(buffer);
        return true;
    }
}
