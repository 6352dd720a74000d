using System.Net;
using System.Net.Http.Headers;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages.Attachments;

/// <summary>Photographs, films and documents: byte for byte in and out, in ranges, hidden but never lost.</summary>
public sealed class AttachmentTests(PostgresFixture postgres)
{
    private const string Run = "/api/v1/tests/FO-0002/attachments";

    [Fact]
    public async Task Attach_Photograph_IsGivenBackByteForByteAndTheSameAgainIsTheSame()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var photo = Pictures.Jpeg();

        var first = await lab.Attach(Run, photo, "?name=C%3A%5Cfolder%5Cside.jpg&caption=Left%20side&moment=after&camera=hall-3&takenAt=2031-02-09T11:30:00Z");
        var second = await lab.Attach(Run, photo);

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.OK), (first.Status, second.Status));
        Assert.Equal(first.Text("id"), second.Text("id"));
        Assert.Equal(("side.jpg", "photograph", "image/jpeg", "after", "Left side"), (first.Text("name"), first.Text("kind"), first.Text("mediaType"), first.Text("moment"), first.Text("caption")));
        Assert.Equal(PackageClient.Sha256(photo), first.Text("sha256"));
        Assert.Equal(photo, await lab.GetByteArrayAsync(Content(first), TestContext.Current.CancellationToken));
        Assert.Equal(1, (await lab.Read(Run)).Json.GetArrayLength());
    }

    [Fact]
    public async Task Content_AskedInRanges_AnswersExactlyThem()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var film = new byte[(5 << 20) + 17];
        new Random(1).NextBytes(film);
        "\x1A\x45\xDF\xA3"u8.CopyTo(film);
        new byte[] { 0x1A, 0x45, 0xDF, 0xA3, 0x87, 0x42, 0x82, 0x84, (byte)'w', (byte)'e', (byte)'b', (byte)'m' }.CopyTo(film, 0);
        var content = Content(await lab.Attach(Run, film));

        using var whole = await lab.GetAsync(content, TestContext.Current.CancellationToken);
        using var middle = await Part(lab, content, (1 << 20) - 5, (3 << 20) + 5, null);
        using var last = await Part(lab, content, null, 100, null);
        using var beyond = await Part(lab, content, film.Length, null, null);
        using var sameTag = await Part(lab, content, 10, 19, whole.Headers.ETag!.ToString());
        using var otherTag = await Part(lab, content, 10, 19, "\"another\"");

        Assert.Equal("video/webm", whole.Content.Headers.ContentType!.MediaType);
        Assert.Equal((HttpStatusCode.PartialContent, $"bytes {(1 << 20) - 5}-{(3 << 20) + 5}/{film.Length}"), (middle.StatusCode, middle.Content.Headers.ContentRange!.ToString()));
        Assert.Equal(film[((1 << 20) - 5)..((3 << 20) + 6)], await Bytes(middle));
        Assert.Equal(film[^100..], await Bytes(last));
        Assert.Equal(HttpStatusCode.RequestedRangeNotSatisfiable, beyond.StatusCode);
        Assert.Equal(film[10..20], await Bytes(sameTag));
        Assert.Equal((HttpStatusCode.OK, film.Length), (otherTag.StatusCode, (await Bytes(otherTag)).Length));
    }

    [Theory]
    [InlineData("image/heic")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("text/plain; charset=utf-8")]
    public async Task Attach_WhateverTheSenderCallsIt_IsTaken(string type)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        using var body = new ByteArrayContent(Pictures.Jpeg());
        body.Headers.TryAddWithoutValidation("Content-Type", type);

        using var answer = await lab.PostAsync(Run, body, TestContext.Current.CancellationToken);

        Assert.Equal((HttpStatusCode.Created, "image/jpeg"), (answer.StatusCode, (await Answer.Of(answer)).Text("mediaType")));
    }

    [Theory]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>", "drawing.svg")]
    [InlineData("<!DOCTYPE html><script>alert(1)</script>", "photo.jpg")]
    [InlineData("PK\u0003\u0004", "data.zip")]
    public async Task Content_OfSomethingElse_IsOnlySaved(string text, string name)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var attached = await lab.Attach(Run, System.Text.Encoding.UTF8.GetBytes(text), $"?name={name}", "image/jpeg");

        using var answer = await lab.GetAsync(Content(attached), TestContext.Current.CancellationToken);

        Assert.Equal("application/octet-stream", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("other", attached.Text("kind"));
    }

    [Fact]
    public async Task Withdraw_Attachment_HidesItAndKeepsItsBytes()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var photo = Pictures.Jpeg();
        var attached = await lab.Attach(Run, photo);
        var address = $"/api/v1/attachments/{attached.Text("id")}";

        var withdrawn = await lab.Post($"{address}/withdrawal", new { reason = "A person's face", version = 1 });

        Assert.Equal(HttpStatusCode.OK, withdrawn.Status);
        Assert.Equal(0, (await lab.Read(Run)).Json.GetArrayLength());
        Assert.Equal("A person's face", (await lab.Read($"{Run}?withdrawn=true")).Json[0].GetProperty("acts")[1].GetProperty("reason").GetString());
        Assert.Equal(HttpStatusCode.NotFound, (await lab.Read($"{address}/content")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await lab.Read($"{address}/thumbnail")).Status);
        Assert.Equal(HttpStatusCode.OK, (await lab.Post($"{address}/restoration", new { reason = "It is a dummy", version = 2 })).Status);
        Assert.Equal(photo, await lab.GetByteArrayAsync($"{address}/content", TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Describe_SecondOfTwoEditors_IsToldAndNothingIsOverwritten()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var address = $"/api/v1/attachments/{(await lab.Attach(Run, Pictures.Jpeg())).Text("id")}";

        var answers = await Task.WhenAll(
            lab.PutJson(address, new { caption = "first", version = 1 }), lab.PutJson(address, new { caption = "second", version = 1 }));

        Assert.Equal([HttpStatusCode.OK, HttpStatusCode.Conflict], answers.Select(answer => answer.Status).Order());
        var told = answers.Single(answer => answer.Status == HttpStatusCode.Conflict);
        Assert.Equal("Changed meanwhile", told.Text("title"));
        Assert.Equal("2", (await lab.Read(address)).Text("version"));
    }

    [Fact]
    public async Task Attach_LongerThanTheLimit_IsRefusedAndNothingStored()
    {
        await using var api = await ApiHost.Start(postgres, settings: new Dictionary<string, string> { ["Attachments:MaxBytes"] = "1000" });
        using var lab = await Lab(api);
        var rows = await LabTables.Rows(api);

        var told = await lab.Attach(Run, new byte[1001]);
        using var streamed = new StreamContent(new Endless(1001));
        using var unannounced = await lab.PostAsync(Run, streamed, TestContext.Current.CancellationToken);

        Assert.Equal((HttpStatusCode.RequestEntityTooLarge, HttpStatusCode.RequestEntityTooLarge), (told.Status, unannounced.StatusCode));
        Assert.Contains("1000", told.Text("detail"), StringComparison.Ordinal);
        Assert.Equal(rows, await LabTables.Rows(api));
        Assert.Equal(HttpStatusCode.Created, (await lab.Attach(Run, new byte[1000])).Status);
    }

    [Fact]
    public async Task Attach_BrokenOff_LeavesNothing()
    {
        await using var api = await ApiHost.Start(postgres, listen: true);
        using var lab = await Lab(api);
        var rows = await LabTables.Rows(api);
        using var stop = new CancellationTokenSource();
        using var body = new StreamContent(new Endless(1L << 40, afterBytes: 3 << 20, then: stop.Cancel));

        await Assert.ThrowsAnyAsync<Exception>(() => lab.PostAsync(Run, body, stop.Token));

        await Task.Delay(300, TestContext.Current.CancellationToken);
        Assert.Equal(rows, await LabTables.Rows(api));
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(api.DataFolder, "uploads")));
        Assert.Equal(HttpStatusCode.OK, (await lab.Read(Run)).Status);
    }

    [Fact]
    public async Task Attach_DiskOfTheDatabaseFull_Is507AndNothingIsStored()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var rows = await LabTables.Rows(api);

        // PostgreSQL's own code for a full disk, raised where the second chunk is written.
        await Store.Sql.Execute(api.Connections.Owner, """
            CREATE FUNCTION lab.no_room() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN IF NEW.number = 1 THEN RAISE EXCEPTION 'No space left on device' USING ERRCODE = '53100'; END IF; RETURN NEW; END $$;
            CREATE TRIGGER no_room BEFORE INSERT ON lab.stored_file_chunk FOR EACH ROW EXECUTE FUNCTION lab.no_room()
            """);

        var answer = await lab.Attach(Run, new byte[2 << 20]);

        Assert.Equal(HttpStatusCode.InsufficientStorage, answer.Status);
        Assert.Equal(rows, await LabTables.Rows(api));
    }

    [Fact]
    public async Task Package_WithPhotographs_HasThemAsAttachmentsThatALaterPackageKeeps()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        var (photo, paper) = (Pictures.Jpeg(), "a protocol"u8.ToArray());
        var zip = TestZip.With(TestZip.With(TestPackages.Whole, "Photo/side.jpg", photo), "Document/protocol.txt", paper);
        await lab.Upload(zip);
        var listed = (await lab.Read(Run)).Json.EnumerateArray().ToDictionary(one => one.GetProperty("packagePath").GetString()!);
        Assert.Equal(["Document/protocol.txt", "Photo/side.jpg"], listed.Keys.Order());
        var side = listed["Photo/side.jpg"].GetProperty("id").GetInt64();
        await lab.PutJson($"/api/v1/attachments/{side}", new { caption = "From the left", version = 1 });

        await lab.Upload(TestPackages.Repacked(TestZip.With(TestPackages.Whole, "Photo/side.jpg", photo)), $"?replaces={PackageClient.Sha256(zip)}&reason=less");

        var kept = Assert.Single((await lab.Read(Run)).Json.EnumerateArray());
        Assert.Equal((side, "From the left", "photograph"), (kept.GetProperty("id").GetInt64(), kept.GetProperty("caption").GetString(), kept.GetProperty("kind").GetString()));
        Assert.Equal(photo, await lab.GetByteArrayAsync($"/api/v1/attachments/{side}/content", TestContext.Current.CancellationToken));
        Assert.Equal(HttpStatusCode.NotFound, (await lab.Read($"/api/v1/attachments/{listed["Document/protocol.txt"].GetProperty("id")}/content")).Status);
    }

    [Fact]
    public async Task Specimen_Photographs_AreItsOwn()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var vehicle = (await lab.Read("/api/v1/tests/FO-0002")).Text("vehicle");
        var specimen = (await lab.Post($"/api/v1/vehicles/{vehicle}/specimens", new { serial = "ABC1234567" })).Text("id");

        var attached = await lab.Attach($"/api/v1/specimens/{specimen}/attachments", Pictures.WebP(), "?caption=As%20received&moment=before");

        Assert.Equal((HttpStatusCode.Created, specimen, "image/webp"), (attached.Status, attached.Text("specimen"), attached.Text("mediaType")));
        Assert.Equal(1, (await lab.Read($"/api/v1/specimens/{specimen}/attachments")).Json.GetArrayLength());
        Assert.Equal(0, (await lab.Read(Run)).Json.GetArrayLength());
        Assert.Equal(HttpStatusCode.NotFound, (await lab.Attach("/api/v1/specimens/9999/attachments", Pictures.WebP())).Status);
    }

    [Theory]
    [InlineData("?kind=poster", "photograph")]
    [InlineData("?moment=later", "before")]
    public async Task Attach_WordsThatAreNone_AreNamed(string query, string known)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);

        var answer = await lab.Attach(Run, Pictures.Jpeg(), query);

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Contains(known, answer.Text("detail"), StringComparison.Ordinal);
    }

    private static string Content(Answer attached) => $"/api/v1/attachments/{attached.Text("id")}/content";

    private static async Task<HttpClient> Lab(ApiHost api)
    {
        var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestPackages.Whole);
        return lab;
    }

    private static Task<HttpResponseMessage> Part(HttpClient lab, string path, long? from, long? to, string? ifRange)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, path) { Headers = { Range = new RangeHeaderValue(from, to) } };
        request.Headers.IfRange = ifRange is null ? null : new RangeConditionHeaderValue(ifRange);
        return lab.SendAsync(request, TestContext.Current.CancellationToken);
    }

    private static Task<byte[]> Bytes(HttpResponseMessage answer) => answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
}
