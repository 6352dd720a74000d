using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Toepan.Domain.Packages.Archive;

/// <summary>What identifies the content of one entry.</summary>
internal sealed record EntryDigest(string Name, long Length, byte[] Sha256)
{
    /// <summary>
    /// Lower-case hex SHA-256 over the rows (UTF-8 name, zero byte, length as 8 bytes little-endian, SHA-256) in ordinal order of the names:
    /// the same for every zip of the same files.
    /// </summary>
    public static string OfAll(IEnumerable<EntryDigest> digests)
    {
        using var sha = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Span<byte> length = stackalloc byte[sizeof(long) + 1];
        foreach (var digest in digests.OrderBy(digest => digest.Name, StringComparer.Ordinal))
        {
            length[0] = 0;
            BinaryPrimitives.WriteInt64LittleEndian(length[1..], digest.Length);
            sha.AppendData(Encoding.UTF8.GetBytes(digest.Name));
            sha.AppendData(length);
            sha.AppendData(digest.Sha256);
        }

        return Convert.ToHexStringLower(sha.GetHashAndReset());
    }
}
