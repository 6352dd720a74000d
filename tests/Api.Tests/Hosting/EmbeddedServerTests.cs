using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Toepan.Support;

namespace Toepan.Api.Tests.Hosting;

/// <summary>The built service as a process with its private cluster: started, stopped, killed, and started again over the same data.</summary>
public sealed class EmbeddedServerTests : IDisposable
{
    private readonly DirectoryInfo folder = TestFolders.Create();

    private string Data => Path.Combine(folder.FullName, "data");

    private string FirstRun => Path.Combine(Data, "first-run.json");

    private string ProcessFile => Path.Combine(Data, "cluster", "pgdata", "postmaster.pid");

    public void Dispose() => folder.Delete(recursive: true);

    [Theory]
    [InlineData("TERM")]
    [InlineData("INT")]
    public async Task Service_StopSignal_StopsBothAndKeepsEverything(string signal)
    {
        string secrets;
        using (var first = await ServiceProcess.Start(Data))
        {
            secrets = await File.ReadAllTextAsync(FirstRun, TestContext.Current.CancellationToken);
            await AddClass(first);
            first.Signal(signal);

            Assert.Equal(0, await first.WaitForExit());
            Assert.Contains(FirstRun, first.Output, StringComparison.Ordinal);
            Assert.DoesNotContain(Secret("ingestToken"), first.Output, StringComparison.Ordinal);
        }

        Assert.False(File.Exists(ProcessFile));
        using var second = await ServiceProcess.Start(Data);
        Assert.True(await HasClass(second));
        Assert.Equal(secrets, await File.ReadAllTextAsync(FirstRun, TestContext.Current.CancellationToken));
        Assert.DoesNotContain("first-run.json", second.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Service_Killed_NextStartTakesOver()
    {
        using (var first = await ServiceProcess.Start(Data))
        {
            await AddClass(first);
            first.Signal("KILL");
            await first.WaitForExit();
        }

        var left = Postmaster();
        Assert.True(Directory.Exists($"/proc/{left}"));
        using var second = await ServiceProcess.Start(Data);
        Assert.NotEqual(left, Postmaster());
        Assert.True(await HasClass(second));
    }

    [Fact]
    public async Task Service_KilledWithItsDatabase_NextStartRecovers()
    {
        using (var first = await ServiceProcess.Start(Data))
        {
            await AddClass(first);
            first.Signal("KILL");
            Signals.Send("KILL", Postmaster());
            await first.WaitForExit();
        }

        Assert.True(File.Exists(ProcessFile));
        using var second = await ServiceProcess.Start(Data);
        Assert.True(await HasClass(second));
    }

    /// <summary>After a crash of the machine the number in the process file may be anybody's; here it is this test's.</summary>
    [Fact]
    public async Task Service_StaleProcessFileWithALivingNumber_StartsAndLeavesThatProcessAlone()
    {
        using (var first = await ServiceProcess.Start(Data))
        {
            await AddClass(first);
            var file = await File.ReadAllLinesAsync(ProcessFile, TestContext.Current.CancellationToken);
            first.Signal("KILL");
            Signals.Send("KILL", Postmaster());
            await first.WaitForExit();
            file[0] = Environment.ProcessId.ToString(CultureInfo.InvariantCulture);
            await File.WriteAllLinesAsync(ProcessFile, file, TestContext.Current.CancellationToken);
        }

        using var second = await ServiceProcess.Start(Data);
        Assert.True(await HasClass(second));
    }

    [Fact]
    public async Task Database_KilledWhileServing_IsStartedAgain()
    {
        using var service = await ServiceProcess.Start(Data);
        await AddClass(service);
        var killed = Postmaster();

        Signals.Send("KILL", killed);
        await service.WaitForHealth(HttpStatusCode.ServiceUnavailable);
        await service.WaitForHealth(HttpStatusCode.OK);

        Assert.NotEqual(killed, Postmaster());
        Assert.True(await HasClass(service));
    }

    [Fact]
    public async Task Service_SecondOverTheSameData_IsRefused()
    {
        using var first = await ServiceProcess.Start(Data);
        using var second = ServiceProcess.Launch(Data);

        Assert.Equal(1, await second.WaitForExit());
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"(process {first.Id})"), second.Output, StringComparison.Ordinal);
        Assert.Contains("--data DIR", second.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", second.Output, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, await first.Health());
    }

    [Fact]
    public async Task Service_DataOfAnotherPostgresVersion_IsRefusedWithTheCommands()
    {
        using (var first = await ServiceProcess.Start(Data))
        {
            await AddClass(first);
        }

        var version = Path.Combine(Data, "cluster", "pgdata", "PG_VERSION");
        var real = await File.ReadAllTextAsync(version, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(version, "9\n", TestContext.Current.CancellationToken);
        using (var refused = ServiceProcess.Launch(Data))
        {
            Assert.Equal(1, await refused.WaitForExit());
            Assert.Contains("was written by PostgreSQL 9", refused.Output, StringComparison.Ordinal);
            Assert.Contains("pg_upgrade", refused.Output, StringComparison.Ordinal);
            Assert.DoesNotContain("   at ", refused.Output, StringComparison.Ordinal);
        }

        await File.WriteAllTextAsync(version, real, TestContext.Current.CancellationToken);
        using var second = await ServiceProcess.Start(Data);
        Assert.True(await HasClass(second));
    }

    [Fact]
    public async Task Service_HalfMadeCluster_IsMadeAnew()
    {
        Directory.CreateDirectory(Path.Combine(Data, "cluster", "pgdata.unfinished", "base"));

        using var service = await ServiceProcess.Start(Data);

        Assert.False(Directory.Exists(Path.Combine(Data, "cluster", "pgdata.unfinished")));
    }

    [Fact]
    public async Task Service_FirstStartKilledAfterTheFile_KeepsItsSecrets()
    {
        Directory.CreateDirectory(Data);
        const string Written = """{"baseUrl":"http://127.0.0.1:1","administrator":{"name":"administrator","password":"written before the kill"},"ingestToken":"toepan_written-before-the-kill"}""";
        await File.WriteAllTextAsync(FirstRun, Written, TestContext.Current.CancellationToken);

        using var service = await ServiceProcess.Start(Data);

        await AddClass(service);
        Assert.True(await HasClass(service));
        Assert.Equal(Written, await File.ReadAllTextAsync(FirstRun, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Service_VeryLongDataPath_FindsARoomForItsSocket()
    {
        var deep = Path.Combine(folder.FullName, new string('d', 60), new string('e', 60), "data");

        using var service = await ServiceProcess.Start(deep);

        Assert.Equal(HttpStatusCode.OK, await service.Health());
    }

    [Fact]
    public async Task Service_ParentTheClusterCannotPass_IsRefusedWithTheFolder()
    {
        Assert.SkipUnless(Environment.IsPrivilegedProcess, "Only root runs its database as another user.");
        var closed = folder.CreateSubdirectory("closed");
        closed.UnixFileMode = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

        using var refused = ServiceProcess.Launch(Path.Combine(closed.FullName, "data"));

        Assert.Equal(1, await refused.WaitForExit());
        Assert.Contains($"may not pass through {closed.FullName}.", refused.Output, StringComparison.Ordinal);
    }

    private int Postmaster() => int.Parse(File.ReadLines(ProcessFile).First(), CultureInfo.InvariantCulture);

    private string Secret(string member) => JsonDocument.Parse(File.ReadAllText(FirstRun)).RootElement.GetProperty(member).GetString()!;

    /// <summary>Stores something, as the administrator of first-run.json.</summary>
    private async Task AddClass(ServiceProcess service)
    {
        using var browser = new Browser(new HttpClient { BaseAddress = service.Address });
        var administrator = JsonDocument.Parse(await File.ReadAllTextAsync(FirstRun)).RootElement.GetProperty("administrator");
        using var signedIn = await browser.TrySignIn(administrator.GetProperty("name").GetString()!, administrator.GetProperty("password").GetString()!);
        using var change = new HttpRequestMessage(HttpMethod.Post, "/api/v1/classes") { Content = JsonContent.Create(new { key = "estate-car", title = "Estate cars" }) };
        change.Headers.Add(Browser.AntiforgeryHeader, await browser.AntiforgeryToken("/preferences"));
        using var answer = await browser.Client.SendAsync(change);
        answer.EnsureSuccessStatusCode();
    }

    private async Task<bool> HasClass(ServiceProcess service)
    {
        using var request = Authorized(HttpMethod.Get, "/api/v1/classes");
        using var answer = await service.Client.SendAsync(request);
        return (await answer.EnsureSuccessStatusCode().Content.ReadAsStringAsync()).Contains("estate-car", StringComparison.Ordinal);
    }

    private HttpRequestMessage Authorized(HttpMethod method, string path)
    {
        var request = new HttpRequestMessage(method, path);
        request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", Secret("ingestToken"));
        return request;
    }
}
