using System.Text;
using static Toepan.Domain.Tests.Packages.Malformed.MalformedCase;

namespace Toepan.Domain.Tests.Packages.Malformed;

/// <summary>What an archive can be beside an honest one.</summary>
internal static class MalformedArchives
{
    private const int Megabyte = 1 << 20;

    public static IEnumerable<MalformedCase> All()
    {
        yield return Archive("empty file", () => [], "E package.not-a-zip");
        yield return Archive("one byte", () => [0x50], "E package.not-a-zip");
        yield return Archive("text", () => Encoding.ASCII.GetBytes("time,11HEAD0000H3ACXP\n"), "E package.not-a-zip");
        yield return Archive("zeros", () => new byte[100_000], "E package.not-a-zip");
        yield return Archive("cut in the middle", () => new SamplePackage().Zip()[..900], "E package.damaged");
        yield return Archive("last byte missing", () => new SamplePackage().Zip()[..^1], "E package.damaged");
        yield return Archive("bytes after the end", () => [.. new SamplePackage().Zip(), 0, 0, 0], "E package.damaged");
        yield return Archive("bytes before the start", () => [1, 2, 3, .. new SamplePackage().Zip()], "E package.damaged");
        yield return Archive("no entries", () => RawZip.Of([]), "E package.no-programme programme.json", "E package.no-test-header", "E package.no-channel");
        yield return Archive("directory claims fewer entries", () => RawZip.Of(Sample(), claimedCount: 3), "E package.damaged");
        yield return Archive("directory claims more entries", () => RawZip.Of(Sample(), claimedCount: 4_000), "E package.damaged");
        yield return Archive("directory moved", () => Patch(new SamplePackage().Zip(), fromEnd: 6, 0xFF, 0xFF, 0xFF, 0x7F), "E package.damaged");
        yield return Archive("100 000 entries", () => Many(100_000), "E package.too-many-entries");
        yield return Archive("100 000 entries that claim to be 1", () => Many(100_000, claimed: 1), "E package.damaged");
        yield return Archive("5 001 entries", () => Many(5_001), "E package.too-many-entries");
        yield return Archive("bomb of one entry", () => With(new RawEntry("Document/a.bin", new byte[64 * Megabyte])), "E package.ratio");
        yield return Archive("bomb that claims to be small", () => With(new RawEntry("Document/a.bin", new byte[64 * Megabyte]) { ClaimedSize = 1_000 }), "E package.damaged Document/a.bin");
        yield return Archive("claims 1 GiB", () => With(new RawEntry("Document/a.bin", new byte[10]) { ClaimedSize = 1u << 30 }), "E package.ratio");
        yield return Archive("claims too much", () => With([.. Enumerable.Range(0, 3).Select(i => new RawEntry($"Document/{i}.bin", new byte[10]) { ClaimedSize = uint.MaxValue - 1 })]), "E package.expands-too-far");
        yield return Archive("claims more than it holds", () => With(new RawEntry("Document/a.bin", new byte[10]) { ClaimedSize = 20 }), "E package.damaged Document/a.bin");
        yield return Archive("wrong checksum", () => With(new RawEntry("Document/a.bin", new byte[10]) { ClaimedCrc = 1 }), "E package.damaged Document/a.bin");
        yield return Archive("no deflate stream", () => With(new RawEntry("Document/a.bin", new byte[10]) { Method = 8 }, packed: [0xFF, 0xFF, 0xFF]), "E package.damaged Document/a.bin");
        yield return Archive("shared bytes", () => With(new RawEntry("Document/a.bin", new byte[10]), new RawEntry("Document/b.bin", new byte[10]) { ShareWith = 9, LocalName = Encoding.ASCII.GetBytes("Document/a.bin") }), "E package.damaged");
        yield return Archive("shared bytes, same name", () => With(new RawEntry("Document/a.bin", new byte[10]), new RawEntry("Document/a.bin", new byte[10]) { ShareWith = 9 }), "E package.overlapping-entries Document/a.bin");
        yield return Archive("encrypted entry", () => With(new RawEntry("Document/a.bin", new byte[10]) { Flags = 1 }), "E package.encrypted Document/a.bin");
        yield return Archive("unknown packing method", () => With(new RawEntry("Document/a.bin", new byte[10]) { Method = 12 }), "E package.unsupported Document/a.bin");
        yield return Archive("another disk", () => With(new RawEntry("Document/a.bin", new byte[10]) { Disk = 2 }), "E package.unsupported Document/a.bin");
        yield return Archive("symbolic link", () => With(new RawEntry("Photo/a", "/etc/passwd") { Mode = 0xA1FF }), "E package.link Photo/a");
        yield return Archive("link to a folder", () => With(new RawEntry("Channel", "..") { Mode = 0xA1FF }), "E package.link Channel");
        yield return Archive("device", () => With(new RawEntry("Photo/a", "") { Mode = 0x2180 }), "E package.unsupported Photo/a");
        yield return Archive("named pipe", () => With(new RawEntry("Photo/a", "") { Mode = 0x1180 }), "E package.unsupported Photo/a");
        yield return Archive("folder that is no folder", () => With(new RawEntry("Photo/a", "x") { Mode = 0x41ED }), "E package.unsupported Photo/a");
        yield return Archive("DOS folder that is no folder", () => With(new RawEntry("Photo/a", "x") { DosAttributes = 0x10 }), "E package.unsupported Photo/a");
        yield return Archive("folder with content", () => With(new RawEntry("Photo/x/", "content")), "E package.unsupported Photo/x/");
        yield return Archive("file and folder of one name", () => With(new RawEntry("Photo/a.jpg/b.jpg", "x")), "E package.duplicate-name Photo/a.jpg");
        yield return Archive("name twice", () => With(new RawEntry("programme.json", "{}")), "E package.duplicate-name programme.json");
        yield return Archive("names equal but for case", () => With(new RawEntry("PROGRAMME.JSON", "{}")), "E package.duplicate-name PROGRAMME.JSON");
        yield return Archive("names equal but for composition", () => With(new RawEntry("Photo/\u00E9.jpg", "x"), new RawEntry("Photo/e\u0301.jpg", "x")), "E package.duplicate-name Photo/e\u0301.jpg");
        yield return Archive("case-equal names under folders that differ in case", () => With(new RawEntry("CHANNEL/fo-0042.001", "x")), "E package.duplicate-name CHANNEL/fo-0042.001");
        yield return Archive("local name differs", () => With(new RawEntry("Document/a.bin", "x") { LocalName = Encoding.ASCII.GetBytes("Document/b.bin") }), "E package.damaged");
        foreach (var (what, name) in UnsafeNames())
        {
            yield return Archive($"name that {what}", () => With(new RawEntry(name, "x")), $"E package.unsafe-name {Packages.SamplePackage.Shown(name)}");
        }

        yield return Archive("name too long", () => With(new RawEntry("Photo/" + new string('a', 600), "x")), "E package.unsafe-name");
        yield return Archive("empty name", () => With(new RawEntry("", "x")), "E package.unsafe-name ");
        yield return Archive(
            "two top folders", () => RawZip.Of([.. new SamplePackage().Files.Select((file, i) => new RawEntry($"part{i % 2}/{file.Key}", file.Value))]),
            "E package.no-programme programme.json", "E package.no-test-header", "E package.no-channel");
        yield return Archive(
            "two nested top folders", () => new SamplePackage().Zip("a/b/"),
            "E package.no-programme programme.json", "E package.no-test-header", "E package.no-channel");
    }

    private static IEnumerable<(string What, string Name)> UnsafeNames() =>
    [
        ("climbs", "../evil.txt"), ("climbs from within", "Photo/../../evil.txt"), ("ends climbing", "Photo/.."), ("is absolute", "/etc/cron.d/evil"),
        ("has a backslash", "Photo\\evil.txt"), ("climbs by backslash", "..\\evil.txt"), ("names a drive", "C:/evil.txt"), ("names a drive only", "c:evil.txt"),
        ("has a dot segment", "./programme.json"), ("has an empty segment", "Photo//a.jpg"), ("has a NUL", "Photo/a\0.jpg"), ("has a line end", "Photo/a\n.jpg"),
        ("is no character", "Photo/\uFFFE.jpg"),
    ];

    private static List<RawEntry> Sample() => [.. new SamplePackage().Files.Select(file => new RawEntry(file.Key, file.Value))];

    private static byte[] With(params RawEntry[] more) => RawZip.Of([.. Sample(), .. more]);

    private static byte[] With(RawEntry entry, byte[] packed) => RawZip.Of([.. Sample(), entry with { Packed = packed }]);

    private static byte[] Many(int count, int? claimed = null) =>
        RawZip.Of([.. Enumerable.Range(0, count).Select(i => new RawEntry($"Document/{i}.txt", []) { Method = 0 })], claimed);

    private static byte[] Patch(byte[] zip, int fromEnd, params byte[] bytes)
    {
        bytes.CopyTo(zip, zip.Length - fromEnd);
        return zip;
    }
}
