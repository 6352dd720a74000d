using System.Net;
using SkiaSharp;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages.Attachments;

/// <summary>What the public may get of a photograph: its pixels. Marks are planted wherever metadata can stand and searched in every byte of the answer.</summary>
public sealed class PublicCopyTests(PostgresFixture postgres)
{
    private const string Run = "/api/v1/tests/FO-0002/attachments";

    public static TheoryData<string> Kinds => ["jpeg", "png", "webp"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task PublicCopy_MarksInEveryPlace_AreAllGone(string kind)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var original = kind switch { "jpeg" => Pictures.Jpeg(), "png" => Pictures.Png(), _ => Pictures.WebP() };
        Assert.Equal(kind != "webp", Pictures.Holds(original, Pictures.Mark));
        var address = await Marked(api, lab, original, $"?name={Pictures.Mark}.{kind}&caption={Pictures.Mark}%20caption&camera={Pictures.Mark}");

        foreach (var path in new[] { $"{address}/public-copy", $"{address}/thumbnail" })
        {
            using var answer = await lab.GetAsync(path, TestContext.Current.CancellationToken);
            var bytes = await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);

            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.False(Pictures.Holds(bytes, Pictures.Mark));
            Assert.DoesNotContain(Pictures.Mark, $"{answer.Headers}{answer.Content.Headers}", StringComparison.Ordinal);
            AssertBare(bytes);
            using var drawn = SKBitmap.Decode(bytes);
            Assert.Equal((60, 40), (drawn.Width, drawn.Height));
        }
    }

    /// <summary>The eight ways of Exif 2.32, Orientation: where the red corner of the stored picture is in the upright one.</summary>
    [Theory]
    [InlineData(1, 60, 40, 2, 2)]
    [InlineData(2, 60, 40, 57, 2)]
    [InlineData(3, 60, 40, 57, 37)]
    [InlineData(4, 60, 40, 2, 37)]
    [InlineData(5, 40, 60, 2, 2)]
    [InlineData(6, 40, 60, 37, 2)]
    [InlineData(7, 40, 60, 37, 57)]
    [InlineData(8, 40, 60, 2, 57)]
    public async Task PublicCopy_PictureStoredOnItsSide_IsUpright(ushort orientation, int width, int height, int redX, int redY)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var address = await Marked(api, lab, Pictures.Jpeg(orientation), "");

        using var drawn = SKBitmap.Decode(await lab.GetByteArrayAsync($"{address}/public-copy", TestContext.Current.CancellationToken));

        Assert.Equal((width, height), (drawn.Width, drawn.Height));
        var corner = drawn.GetPixel(redX, redY);
        Assert.True(corner is { Red: > 200, Green: < 60, Blue: < 60 }, $"at {redX}, {redY}: {corner}");
    }

    [Fact]
    public async Task PublicCopy_NotMarkedOrWithdrawn_IsNotGiven()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var address = $"/api/v1/attachments/{(await lab.Attach(Run, Pictures.Jpeg())).Text("id")}";
        using var words = await api.Machine(Role.Communications);
        Assert.Equal(HttpStatusCode.Conflict, (await lab.Read($"{address}/public-copy")).Status);
        Assert.Equal(HttpStatusCode.Forbidden, (await lab.PutJson($"{address}/sheet", new { alternativeText = "x", version = 1 })).Status);
        Assert.Equal(HttpStatusCode.OK, (await words.PutJson($"{address}/sheet", new { alternativeText = "The van after the crash", version = 1 })).Status);
        Assert.Equal(HttpStatusCode.OK, (await lab.Read($"{address}/public-copy")).Status);

        await lab.Post($"{address}/withdrawal", new { reason = "not ours", version = 2 });

        Assert.Equal(HttpStatusCode.NotFound, (await lab.Read($"{address}/public-copy")).Status);
        await lab.Post($"{address}/restoration", new { reason = "ours", version = 3 });
        Assert.Equal(HttpStatusCode.Conflict, (await lab.Read($"{address}/public-copy")).Status);
    }

    [Fact]
    public async Task Mark_Film_IsRefusedAndSaysWhy()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        using var words = await api.Machine(Role.Communications);
        byte[] film = [0x1A, 0x45, 0xDF, 0xA3, 0x87, 0x42, 0x82, 0x84, .. "webm"u8, 0];
        var address = $"/api/v1/attachments/{(await lab.Attach(Run, film)).Text("id")}";

        var answer = await words.PutJson($"{address}/sheet", new { alternativeText = "The crash", version = 1 });

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Contains("not given to the public", answer.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Thumbnail_PictureThatClaimsToBeEnormous_IsNotDecoded()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var address = $"/api/v1/attachments/{(await lab.Attach(Run, Pictures.Bomb())).Text("id")}";

        var before = GC.GetTotalAllocatedBytes();
        var answer = await lab.Read($"{address}/thumbnail");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains("60000 × 60000", answer.Text("detail"), StringComparison.Ordinal);
        Assert.True(GC.GetTotalAllocatedBytes() - before < 64 << 20);
        Assert.Equal(HttpStatusCode.OK, (await lab.Read($"{address}/content")).Status);
    }

    [Fact]
    public async Task Thumbnail_PictureCutOff_IsRefusedInWords()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var address = $"/api/v1/attachments/{(await lab.Attach(Run, Pictures.Png()[..120])).Text("id")}";

        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await lab.Read($"{address}/thumbnail")).Status);
    }

    // By the layouts again, not by the code under test: nothing but what pixels need.
    private static void AssertBare(byte[] bytes)
    {
        if (bytes[0] == 0x89)
        {
            var names = new List<string>();
            for (var at = 8; at < bytes.Length; at += 12 + System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(at)))
            {
                names.Add(System.Text.Encoding.ASCII.GetString(bytes, at + 4, 4));
            }

            Assert.Empty(names.Except(["IHDR", "IDAT", "IEND"]));
            return;
        }

        for (var at = 2; bytes[at + 1] != 0xDA; at += 2 + System.Buffers.Binary.BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at + 2)))
        {
            Assert.True(bytes[at + 1] is 0xE0 or < 0xE0, $"segment {bytes[at + 1]:X2}");
        }

        Assert.Equal([0xFF, 0xD9], bytes[^2..]);
    }

    private static async Task<string> Marked(ApiHost api, HttpClient lab, byte[] picture, string query)
    {
        var address = $"/api/v1/attachments/{(await lab.Attach(Run, picture, query)).Text("id")}";
        using var words = await api.Machine(Role.Communications);
        Assert.Equal(HttpStatusCode.OK, (await words.PutJson($"{address}/sheet", new { alternativeText = "The van after the crash", version = 1 })).Status);
        return address;
    }

    private static async Task<HttpClient> Lab(ApiHost api)
    {
        var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestPackages.Whole);
        return lab;
    }
}
