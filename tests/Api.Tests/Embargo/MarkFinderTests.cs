using System.IO.Compression;
using System.Text;
using PdfSharp.Pdf;

namespace Toepan.Api.Tests.Embargo;

/// <summary>A walk that finds nothing proves nothing unless its finder finds.</summary>
public sealed class MarkFinderTests
{
    private static readonly Marks Planted = Marks.Chosen();
    private static readonly MarkFinder Finder = new(Planted.Needles());

    public static TheoryData<string> Hidings => [.. Hidden.Keys];

    private static Dictionary<string, byte[]> Hidden => new()
    {
        ["as it is"] = Text($"<p>{Planted.In("note")}</p>"),
        ["in other letters"] = Text(Planted.Stem.ToUpperInvariant()),
        ["a test code"] = Text($"/tests/{Planted.Test(3).ToLowerInvariant()}"),
        ["UTF-16"] = Encoding.Unicode.GetBytes($"a {Planted.Stem}"),
        ["hexadecimal"] = Text(Convert.ToHexStringLower(Text(Planted.Stem))),
        ["base 64"] = Text(Convert.ToBase64String(Text($"{{\"note\":\"{Planted.Stem}\"}}"))),
        ["base 64, shifted"] = Text(Convert.ToBase64String(Text($"{{\"notes\":\"{Planted.Stem}\"}}"))),
        ["base 64, shifted again"] = Text(Convert.ToBase64String(Text($"{{\"remark\":\"{Planted.Stem}\"}}"))),
        ["gzip"] = Packed(stream => new GZipStream(stream, CompressionLevel.Optimal, leaveOpen: true), Text(Planted.Stem)),
        ["name of an entry of a zip"] = Zip($"Photo/{Planted.Stem}.jpg", []),
        ["zip in a zip"] = Zip("inner.zip", Zip("a.txt", Text(Planted.Stem))),
        ["metadata of a photograph"] = PlantedPhotograph.With(Planted.Stem),
        ["PDF"] = Pdf(),
    };

    [Theory]
    [MemberData(nameof(Hidings))]
    public void Find_Hidden_IsFound(string where) => Assert.NotNull(Finder.Find(Hidden[where]));

    [Fact]
    public void Find_OtherText_IsLeftAlone() => Assert.Null(Finder.Find(Text("The board shows every vehicle of every class. FO-0042 {\"title\":\"No such route\"}")));

    [Fact]
    public void Decoded_Brotli_IsAsBefore() => Assert.Equal(
        Text(Planted.Stem), MarkFinder.Decoded(Packed(stream => new BrotliStream(stream, CompressionLevel.Optimal, leaveOpen: true), Text(Planted.Stem)), ["br"]));

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);

    private static byte[] Packed(Func<Stream, Stream> pack, byte[] bytes)
    {
        using var target = new MemoryStream();
        using (var stream = pack(target))
        {
            stream.Write(bytes);
        }

        return target.ToArray();
    }

    private static byte[] Zip(string name, byte[] content)
    {
        using var target = new MemoryStream();
        using (var zip = new ZipArchive(target, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var entry = zip.CreateEntry(name).Open();
            entry.Write(content);
        }

        return target.ToArray();
    }

    /// <summary>A PDF whose one page holds the mark in a deflated stream.</summary>
    private static byte[] Pdf()
    {
        using var document = new PdfDocument();
        var content = document.AddPage().Contents.AppendContent();
        content.CreateStream(Text($"BT ({Planted.Stem} and a good many words after it, so that it is worth packing) Tj ET"));
        content.Stream.Zip();
        using var target = new MemoryStream();
        document.Save(target, closeStream: false);
        return target.ToArray();
    }
}
