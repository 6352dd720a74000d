using System.Globalization;
using System.IO.Compression;
using System.IO.Hashing;
using System.Security.Cryptography;

namespace Toepan.Domain.Packages.Archive;

/// <summary>
/// Expands entries one at a time, measuring what really comes out: against the claimed size, the CRC-32, the limits on expanded bytes and
/// on the ratio of the whole archive. Keeps the SHA-256 of each.
/// </summary>
internal sealed class EntryExpander(Stream zip, PackageLimits limits, ProblemList problems, CancellationToken cancellation)
{
    private const int ChunkBytes = 1 << 16;

    private readonly byte[] chunk = new byte[ChunkBytes];
    private readonly List<EntryDigest> digests = [];
    private byte[] text = [];
    private long expanded;

    /// <summary>True once an entry was damaged or broke a limit: what follows is not worth expanding.</summary>
    public bool Broken { get; private set; }

    /// <summary>Digest of every entry expanded so far.</summary>
    public IReadOnlyList<EntryDigest> Digests => digests;

    /// <summary>
    /// The bytes of an entry that is going to be parsed; null where it was refused. They are good until the next call.
    /// </summary>
    public ReadOnlyMemory<byte>? Read(ZipEntry entry, int maxBytes)
    {
        if (entry.Bytes > maxBytes)
        {
            problems.Reject(
                ProblemCodes.FileTooLong, $"{entry.Name} has {entry.Bytes} bytes; {maxBytes} are allowed.", new Place(entry.Name),
                entry.Bytes.ToString(CultureInfo.InvariantCulture), maxBytes.ToString(CultureInfo.InvariantCulture));
            return null;
        }

        if (text.Length < entry.Bytes)
        {
            text = GC.AllocateUninitializedArray<byte>((int)entry.Bytes);
        }

        return Expand(entry, keep: true) ? text.AsMemory(0, (int)entry.Bytes) : null;
    }

    /// <summary>Expands an entry only to measure, check and hash it; false where it was refused.</summary>
    public bool Skim(ZipEntry entry) => Expand(entry, keep: false);

    /// <summary>The expanded bytes, unmeasured and unchecked.</summary>
    public static Stream Open(Stream zip, ZipEntry entry)
    {
        var section = new SectionStream(zip, entry.DataOffset, entry.PackedBytes);
        return entry.Deflated ? new DeflateStream(section, CompressionMode.Decompress) : section;
    }

    private bool Expand(ZipEntry entry, bool keep)
    {
        Broken |= !TryExpand(entry, keep);
        return !Broken;
    }

    private bool TryExpand(ZipEntry entry, bool keep)
    {
        using var source = Open(zip, entry);
        using var sha = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var crc = new Crc32();
        long done = 0;
        try
        {
            while (true)
            {
                cancellation.ThrowIfCancellationRequested();
                var got = source.Read(chunk);
                if (got == 0)
                {
                    break;
                }

                if (done + got > entry.Bytes)
                {
                    return Damaged(entry, $"expands to more than the {entry.Bytes} bytes it claims");
                }

                if (!Count(got, entry))
                {
                    return false;
                }

                sha.AppendData(chunk, 0, got);
                crc.Append(chunk.AsSpan(0, got));
                if (keep)
                {
                    chunk.AsSpan(0, got).CopyTo(text.AsSpan((int)done));
                }

                done += got;
            }
        }
        catch (InvalidDataException)
        {
            return Damaged(entry, "cannot be expanded");
        }

        if (done != entry.Bytes)
        {
            return Damaged(entry, $"expands to {done} bytes but claims {entry.Bytes}");
        }

        digests.Add(new EntryDigest(entry.Name, done, sha.GetHashAndReset()));
        return crc.GetCurrentHashAsUInt32() == entry.Crc || Damaged(entry, "does not match its checksum");
    }

    private bool Count(int bytes, ZipEntry entry)
    {
        expanded += bytes;
        if (expanded > limits.MaxExpandedBytes)
        {
            problems.Reject(ProblemCodes.ExpandsTooFar, $"The package expands to more than {limits.MaxExpandedBytes} bytes.", new Place(entry.Name), null, limits.MaxExpandedBytes.ToString(CultureInfo.InvariantCulture));
        }
        else if (expanded > limits.MaxRatio * zip.Length)
        {
            problems.Reject(ProblemCodes.Ratio, $"The package expands to more than {limits.MaxRatio.ToString(CultureInfo.InvariantCulture)} times its size.", new Place(entry.Name), null, limits.MaxRatio.ToString(CultureInfo.InvariantCulture));
        }

        return expanded <= limits.MaxExpandedBytes && expanded <= limits.MaxRatio * zip.Length;
    }

    private bool Damaged(ZipEntry entry, string what)
    {
        problems.Reject(ProblemCodes.Damaged, $"The package is damaged: {entry.Name} {what}.", new Place(entry.Name));
        return false;
    }
}
