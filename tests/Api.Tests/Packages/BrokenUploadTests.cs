using System.Net;
using System.Net.Sockets;
using System.Text;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages;

/// <summary>Uploads that go wrong leave nothing behind.</summary>
public sealed class BrokenUploadTests(PostgresFixture postgres)
{
    public static TheoryData<string, byte[]> Broken => new()
    {
        { "no zip", "this is no zip"u8.ToArray() },
        { "empty", [] },
        { "cut short", TestPackages.Whole[..(TestPackages.Whole.Length / 2)] },
        { "no programme.json", TestPackages.WithProgramme(TestPackages.Whole, _ => "") },
        { "broken JSON", TestPackages.WithProgramme(TestPackages.Whole, text => text[..(text.Length / 2)]) },
        { "unknown procedure", TestPackages.WithProgramme(TestPackages.Whole, text => text.Replace("offset-frontal-64", "offset-rear-7", StringComparison.Ordinal)) },
        { "unknown class", TestPackages.WithProgramme(TestPackages.Whole, text => text.Replace("delivery-van", "airship", StringComparison.Ordinal)) },
        { "unknown dummy", TestPackages.WithProgramme(TestPackages.Whole, text => text.Replace("\"H3\"", "\"H9\"", StringComparison.Ordinal)) },
        { "no test code", TestPackages.Renamed(TestPackages.Whole, "FO-0002", "lower-1") },
    };

    [Theory]
    [MemberData(nameof(Broken), DisableDiscoveryEnumeration = true)]
    public async Task Upload_Unreadable_AnswersProblemsAndStoresNothing(string what, byte[] zip)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        var before = await LabTables.Rows(api);

        var answer = await lab.Upload(zip);

        Assert.True(answer.Status == HttpStatusCode.UnprocessableEntity, $"{what}: {answer.Status}");
        Assert.Equal("application/problem+json", answer.MediaType);
        Assert.Contains(answer.Json.GetProperty("problems").EnumerateArray(), problem => problem.GetProperty("severity").GetString() == "error");
        Assert.Equal(before, await LabTables.Rows(api));
        Assert.Empty(Directory.EnumerateFiles(Uploads(api)));
    }

    [Fact]
    public async Task Upload_OverTheLimit_AnswersTooLargeWhetherOrNotTheLengthIsStated()
    {
        await using var api = await ApiHost.Start(postgres, settings: new Dictionary<string, string> { ["Packages:MaxBytes"] = "100000" });
        using var lab = await api.Machine(Role.Engineer);
        var before = await LabTables.Rows(api);

        var stated = await lab.Upload(TestPackages.Whole);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/packages") { Content = new StreamContent(new EndlessStream(TestPackages.Whole)) };
        request.Content.Headers.ContentType = new("application/zip");
        using var unstated = await lab.SendAsync(request, TestContext.Current.CancellationToken);

        Assert.Equal((HttpStatusCode.RequestEntityTooLarge, "application/problem+json"), (stated.Status, stated.MediaType));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, unstated.StatusCode);
        Assert.Equal(before, await LabTables.Rows(api));
    }

    [Fact]
    public async Task Upload_OtherMediaType_IsRefused()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);

        var answer = await lab.Post("/api/v1/packages", new { test = "FO-0002" });

        Assert.Equal((HttpStatusCode.UnsupportedMediaType, "application/problem+json"), (answer.Status, answer.MediaType));
    }

    [Fact]
    public async Task Upload_ConnectionCutInTheMiddle_LeavesNothing()
    {
        await using var api = await ApiHost.Start(postgres, listen: true);
        var token = await api.Token([Role.Engineer]);
        var before = await LabTables.Rows(api);

        await SendHalf(api, token);

        Assert.Equal(before, await LabTables.Rows(api));
        Assert.Empty(Directory.EnumerateFiles(Uploads(api)));
        using var lab = await api.Machine(Role.Engineer);
        Assert.Equal(HttpStatusCode.Created, (await lab.Upload(TestPackages.Whole)).Status);
    }

    private static async Task SendHalf(ApiHost api, string token)
    {
        var zip = TestPackages.Whole;
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, api.Address.Port, TestContext.Current.CancellationToken);
        await using var stream = client.GetStream();
        var head = $"POST /api/v1/packages HTTP/1.1\r\nHost: 127.0.0.1\r\nAuthorization: Bearer {token}\r\nContent-Type: application/zip\r\nContent-Length: {zip.Length}\r\n\r\n";
        await stream.WriteAsync(Encoding.ASCII.GetBytes(head), TestContext.Current.CancellationToken);
        await stream.WriteAsync(zip.AsMemory(0, zip.Length / 2), TestContext.Current.CancellationToken);
        await stream.FlushAsync(TestContext.Current.CancellationToken);
        while (!Directory.Exists(Uploads(api)))
        {
            await Task.Delay(TimeSpan.FromMilliseconds(20), TestContext.Current.CancellationToken);
        }

        client.Client.LingerState = new LingerOption(true, 0);
    }

    /// <summary>Made when the service begins to receive its first package.</summary>
    private static string Uploads(ApiHost api) => Path.Combine(api.DataFolder, "uploads");

    /// <summary>Gives the same bytes over and over, and no length.</summary>
    private sealed class EndlessStream(byte[] bytes) : Stream
    {
        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var given = Math.Min(count, bytes.Length);
            bytes.AsSpan(0, given).CopyTo(buffer.AsSpan(offset));
            return given;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
