using System.Buffers.Binary;

namespace Toepan.Domain.Packages.Archive;

/// <summary>One record of a zip central directory (PKWARE APPNOTE 4.3.12), ZIP64 sizes resolved (4.5.3).</summary>
internal readonly record struct CentralRecord(
    ushort Flags, ushort Method, uint Crc, long PackedBytes, long Bytes, long HeaderOffset, uint Attributes, ReadOnlyMemory<byte> Name, int Disk)
{
    private const uint Signature = 0x02014b50;
    private const int FixedLength = 46;
    private const ushort Zip64Field = 1;

    public bool Encrypted => (Flags & 1) != 0;

    public bool Utf8Name => (Flags & 0x800) != 0;

    /// <summary>Unix file type bits of the external attributes; 0 where the tool recorded none.</summary>
    public uint UnixType => (Attributes >> 16) & 0xF000;

    public bool DosDirectory => (Attributes & 0x10) != 0;

    /// <summary>Reads the record at the start of <paramref name="directory"/> and says how long it is; false where it is damaged.</summary>
    public static bool TryRead(ReadOnlyMemory<byte> directory, out CentralRecord record, out int length)
    {
        (record, length) = (default, 0);
        var span = directory.Span;
        if (span.Length < FixedLength || BinaryPrimitives.ReadUInt32LittleEndian(span) != Signature)
        {
            return false;
        }

        int Short(int at) => BinaryPrimitives.ReadUInt16LittleEndian(directory.Span[at..]);
        uint Long(int at) => BinaryPrimitives.ReadUInt32LittleEndian(directory.Span[at..]);
        var (name, extra, comment) = (Short(28), Short(30), Short(32));
        length = FixedLength + name + extra + comment;
        if (span.Length < length)
        {
            return false;
        }

        var plain = new CentralRecord(
            (ushort)Short(8), (ushort)Short(10), Long(16), Long(20), Long(24), Long(42), Long(38), directory.Slice(FixedLength, name), Short(34));
        return TryWiden(plain, span.Slice(FixedLength + name, extra), out record);
    }

    private static bool TryWiden(CentralRecord plain, ReadOnlySpan<byte> extra, out CentralRecord record)
    {
        record = plain;
        if (plain is { PackedBytes: < uint.MaxValue, Bytes: < uint.MaxValue, HeaderOffset: < uint.MaxValue })
        {
            return true;
        }

        while (extra.Length >= 4)
        {
            var length = BinaryPrimitives.ReadUInt16LittleEndian(extra[2..]);
            if (extra.Length < 4 + length)
            {
                return false;
            }

            if (BinaryPrimitives.ReadUInt16LittleEndian(extra) == Zip64Field)
            {
                var wide = extra.Slice(4, length);
                return TryTake(ref wide, plain.Bytes, out var bytes) & TryTake(ref wide, plain.PackedBytes, out var packed)
                    & TryTake(ref wide, plain.HeaderOffset, out var offset)
                    && (record = plain with { Bytes = bytes, PackedBytes = packed, HeaderOffset = offset }) is { Bytes: >= 0, PackedBytes: >= 0, HeaderOffset: >= 0 };
            }

            extra = extra[(4 + length)..];
        }

        return false;
    }

    // A ZIP64 extra field holds, in this order, only the values whose plain field is all ones.
    private static bool TryTake(ref ReadOnlySpan<byte> wide, long plain, out long value)
    {
        value = plain;
        if (plain != uint.MaxValue)
        {
            return true;
        }

        if (wide.Length < 8)
        {
            return false;
        }

        value = BinaryPrimitives.ReadInt64LittleEndian(wide);
        wide = wide[8..];
        return true;
    }
}
