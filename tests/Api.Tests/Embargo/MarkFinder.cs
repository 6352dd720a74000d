using System.Buffers;
using System.IO.Compression;
using System.Text;

namespace Toepan.Api.Tests.Embargo;

/// <summary>Looks for needles in bytes of any kind: as they are, and inside gzip, brotli, zip and the streams of a PDF, however deep.</summary>
internal sealed class MarkFinder(IEnumerable<string> needles)
{
    private const int Deepest = 4;
    private static readonly byte[] StreamWord = "stream"u8.ToArray();
    private readonly SearchValues<string> wanted = SearchValues.Create([.. needles.Distinct()], StringComparison.OrdinalIgnoreCase);

    /// <summary>Where the first needle stands and what is around it; null where there is none.</summary>
    public string? Find(string text)
    {
        var at = text.AsSpan().IndexOfAny(wanted);
        return at < 0 ? null : text[Math.Max(0, at - 30)..Math.Min(text.Length, at + 40)];
    }

    public string? Find(ReadOnlyMemory<byte> bytes, int depth = 0)
    {
        if (Find(Encoding.Latin1.GetString(bytes.Span)) is { } here)
        {
            return here;
        }

        return depth == Deepest ? null : Inside(bytes).Select(inner => Find(inner, depth + 1)).FirstOrDefault(found => found is not null);
    }

    /// <summary>A body as it was before the transport compressed it.</summary>
    public static byte[] Decoded(byte[] body, IEnumerable<string> encodings) => encodings.Reverse().Aggregate(body, (bytes, encoding) => encoding switch
    {
        "gzip" => Copy(new GZipStream(new MemoryStream(bytes), CompressionMode.Decompress)),
        "br" => Copy(new BrotliStream(new MemoryStream(bytes), CompressionMode.Decompress)),
        "deflate" => Copy(new ZLibStream(new MemoryStream(bytes), CompressionMode.Decompress)),
        _ => bytes,
    });

    private static IEnumerable<ReadOnlyMemory<byte>> Inside(ReadOnlyMemory<byte> bytes) => bytes.Span switch
    {
        [(byte)'P', (byte)'K', 3, 4, ..] => Entries(bytes),
        [0x1F, 0x8B, ..] => [Copy(new GZipStream(Open(bytes), CompressionMode.Decompress))],
        [(byte)'%', (byte)'P', (byte)'D', (byte)'F', ..] => Streams(bytes),
        _ => [],
    };

    private static IEnumerable<ReadOnlyMemory<byte>> Entries(ReadOnlyMemory<byte> bytes)
    {
        using var zip = new ZipArchive(Open(bytes));
        foreach (var entry in zip.Entries)
        {
            yield return Encoding.UTF8.GetBytes($"{entry.FullName}\n{entry.Comment}");
            yield return Copy(entry.Open());
        }
    }

    /// <summary>Streams of a PDF that are deflated (ISO 32000-1, 7.3.8, FlateDecode); others stand there as they are and were searched with the file.</summary>
    private static IEnumerable<ReadOnlyMemory<byte>> Streams(ReadOnlyMemory<byte> bytes)
    {
        for (var at = bytes.Span.IndexOf(StreamWord); at >= 0;)
        {
            var start = at + StreamWord.Length;
            while (start < bytes.Length && bytes.Span[start] is (byte)'\r' or (byte)'\n')
            {
                start++;
            }

            if (Inflated(bytes[start..]) is { } content)
            {
                yield return content;
            }

            var next = bytes.Span[start..].IndexOf(StreamWord);
            at = next < 0 ? -1 : start + next;
        }
    }

    /// <summary>Past the two bytes of the zlib header, which not every writer gets right; null where it is not deflated.</summary>
    private static byte[]? Inflated(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            return bytes.Length > 2 ? Copy(new DeflateStream(Open(bytes[2..]), CompressionMode.Decompress)) : null;
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }

    private static MemoryStream Open(ReadOnlyMemory<byte> bytes) => new(bytes.ToArray());

    private static byte[] Copy(Stream source)
    {
        using (source)
        {
            using var target = new MemoryStream();
            source.CopyTo(target);
            return target.ToArray();
        }
    }
}
