using System.Buffers.Binary;
using System.Globalization;

namespace Toepan.Domain.Packages.Archive;

/// <summary>
/// Reads the central directory of a zip and refuses what no honest package needs, before anything is expanded. It is read here and not by
/// a library because every claim in it is judged: count, flags, file types, sizes and offsets.
/// </summary>
internal sealed class ZipDirectory(Stream zip, PackageLimits limits, ProblemList problems)
{
    private const uint LocalSignature = 0x04034b50;
    private const int LocalLength = 30;
    private const int AverageRecordBytes = 4_096;
    private const ushort Stored = 0;
    private const ushort DeflateMethod = 8;
    private const uint UnixFolder = 0x4000;
    private const uint UnixFile = 0x8000;
    private const uint UnixLink = 0xA000;

    /// <summary>Every file of the archive (folders and litter left out), or null where the archive was refused.</summary>
    public IReadOnlyList<ZipEntry>? Read()
    {
        if (zip.Length > limits.MaxBytes)
        {
            problems.Reject(ProblemCodes.TooManyBytes, $"The package has {zip.Length} bytes; {limits.MaxBytes} are allowed.", default, Text(zip.Length), Text(limits.MaxBytes));
            return null;
        }

        if (zip.Length == 0 || EndOfDirectory.Find(zip) is not { } end)
        {
            return RefuseAsNoZip();
        }

        if (end.Entries > limits.MaxEntries)
        {
            problems.Reject(ProblemCodes.TooManyEntries, $"The package has {end.Entries} entries; {limits.MaxEntries} are allowed.", default, Text(end.Entries), Text(limits.MaxEntries));
            return null;
        }

        if (end.Entries < 0 || end.Length < 0 || end.Offset < 0 || end.Length > end.Position - end.Offset || end.Length > (end.Entries + 16) * AverageRecordBytes)
        {
            return Damaged("its central directory lies outside the archive or is out of all proportion");
        }

        var directory = new byte[end.Length];
        zip.Position = end.Offset;
        zip.ReadExactly(directory);
        return ReadRecords(directory, end) is { } records ? Locate(records, end.Offset) : null;
    }

    private List<(CentralRecord Record, string Name)>? ReadRecords(ReadOnlyMemory<byte> directory, EndOfDirectory end)
    {
        var records = new List<(CentralRecord, string)>((int)end.Entries);
        long expanded = 0;
        for (var i = 0; i < end.Entries; i++)
        {
            if (!CentralRecord.TryRead(directory, out var record, out var length))
            {
                Damaged($"record {i + 1} of its central directory cannot be read");
                return null;
            }

            directory = directory[length..];
            if (Accept(record) is not { } name)
            {
                return null;
            }

            expanded = Math.Min(long.MaxValue / 2, expanded + record.Bytes);
            records.Add((record, name));
        }

        if (!directory.IsEmpty)
        {
            Damaged("its central directory holds more than the entries it claims");
            return null;
        }

        return WithinExpansion(expanded) ? records : null;
    }

    // The record's name where the record is acceptable.
    private string? Accept(CentralRecord record)
    {
        if (record.Name.Length > EntryNames.MaxBytes)
        {
            return Refuse(ProblemCodes.UnsafeName, $"An entry's name has {record.Name.Length} bytes; {EntryNames.MaxBytes} are allowed.", null, Text(record.Name.Length), Text(EntryNames.MaxBytes));
        }

        var name = EntryNames.Decode(record.Name.Span, record.Utf8Name);
        var shown = ProblemList.Show(name);
        if (EntryNames.Refusal(name) is { } reason)
        {
            return Refuse(ProblemCodes.UnsafeName, $"The entry name '{shown}' {reason}.", shown, name);
        }

        if (record.Encrypted)
        {
            return Refuse(ProblemCodes.Encrypted, $"The entry '{shown}' is encrypted.", shown);
        }

        if (record.UnixType == UnixLink)
        {
            return Refuse(ProblemCodes.Link, $"The entry '{shown}' is a link.", shown);
        }

        var folder = name[^1] == '/';
        if (record.UnixType is not (0 or UnixFolder or UnixFile) || (!folder && (record.UnixType == UnixFolder || record.DosDirectory)) || (folder && record.Bytes > 0))
        {
            return Refuse(ProblemCodes.Unsupported, $"The entry '{shown}' is neither a plain file nor an empty folder entry.", shown, Text(record.UnixType));
        }

        return record.Method is Stored or DeflateMethod && record.Disk == 0
            ? name
            : Refuse(ProblemCodes.Unsupported, $"The entry '{shown}' is packed by method {record.Method}; stored (0) and deflated (8) are read.", shown, Text(record.Method), "0, 8");
    }

    private bool WithinExpansion(long expanded)
    {
        if (expanded > limits.MaxExpandedBytes)
        {
            Refuse(ProblemCodes.ExpandsTooFar, $"The package says it expands to {expanded} bytes; {limits.MaxExpandedBytes} are allowed.", null, Text(expanded), Text(limits.MaxExpandedBytes));
        }
        else if (expanded > limits.MaxRatio * zip.Length)
        {
            var ratio = (expanded / (double)zip.Length).ToString("F0", CultureInfo.InvariantCulture);
            Refuse(ProblemCodes.Ratio, $"The package says it expands to {ratio} times its size; {limits.MaxRatio.ToString(CultureInfo.InvariantCulture)} times are allowed.", null, ratio, limits.MaxRatio.ToString(CultureInfo.InvariantCulture));
        }

        return !problems.Rejected;
    }

    // Follows each record to its local header: it must agree, and no two entries may share bytes.
    private List<ZipEntry>? Locate(List<(CentralRecord Record, string Name)> records, long directoryOffset)
    {
        var entries = new List<ZipEntry>(records.Count);
        var ranges = new List<(long From, long To, string Name)>(records.Count);
        foreach (var (record, name) in records)
        {
            if (DataOffset(record) is not { } data || data > directoryOffset - record.PackedBytes)
            {
                Damaged($"the entry '{ProblemList.Show(name)}' is not where the central directory says");
                return null;
            }

            ranges.Add((record.HeaderOffset, data + record.PackedBytes, name));
            if (name[^1] != '/')
            {
                entries.Add(new ZipEntry(name, name, record.Method == DeflateMethod, record.Crc, record.PackedBytes, record.Bytes, data));
            }
        }

        ranges.Sort((a, b) => a.From.CompareTo(b.From));
        for (var i = 1; i < ranges.Count; i++)
        {
            if (ranges[i].From < ranges[i - 1].To)
            {
                var shown = ProblemList.Show(ranges[i].Name);
                Refuse(ProblemCodes.Overlapping, $"The entry '{shown}' shares bytes with another.", shown);
                return null;
            }
        }

        return entries;
    }

    private long? DataOffset(CentralRecord record)
    {
        Span<byte> local = stackalloc byte[LocalLength];
        Span<byte> name = stackalloc byte[EntryNames.MaxBytes];
        if (record.HeaderOffset > zip.Length - LocalLength)
        {
            return null;
        }

        zip.Position = record.HeaderOffset;
        zip.ReadExactly(local);
        var nameLength = BinaryPrimitives.ReadUInt16LittleEndian(local[26..]);
        if (BinaryPrimitives.ReadUInt32LittleEndian(local) != LocalSignature || nameLength != record.Name.Length
            || BinaryPrimitives.ReadUInt16LittleEndian(local[8..]) != record.Method || zip.Position > zip.Length - nameLength)
        {
            return null;
        }

        zip.ReadExactly(name[..nameLength]);
        return name[..nameLength].SequenceEqual(record.Name.Span)
            ? record.HeaderOffset + LocalLength + nameLength + BinaryPrimitives.ReadUInt16LittleEndian(local[28..])
            : null;
    }

    private List<ZipEntry>? RefuseAsNoZip()
    {
        Span<byte> start = stackalloc byte[4];
        zip.Position = 0;
        var begins = zip.ReadAtLeast(start, 4, throwOnEndOfStream: false) == 4 && BinaryPrimitives.ReadUInt32LittleEndian(start) == LocalSignature;
        if (begins)
        {
            return Damaged("it begins as a zip but has no end-of-directory record: it is cut short or followed by other bytes");
        }

        problems.Reject(ProblemCodes.NotAZip, "The package is not a zip archive.");
        return null;
    }

    private List<ZipEntry>? Damaged(string what)
    {
        problems.Reject(ProblemCodes.Damaged, $"The package is damaged: {what}.");
        return null;
    }

    private string? Refuse(string code, string message, string? file, string? value = null, string? limit = null)
    {
        problems.Reject(code, message, new Place(file), value, limit);
        return null;
    }

    private static string Text(long value) => value.ToString(CultureInfo.InvariantCulture);
}
