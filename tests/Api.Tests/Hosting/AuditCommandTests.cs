using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Hosting;

/// <summary>verify-audit over the private cluster: beside the service that runs it, and by itself once that has stopped.</summary>
public sealed class AuditCommandTests
{
    private static readonly Dictionary<string, string> NoEnvironment = [];

    [Fact]
    public async Task Command_PrivateCluster_IsReadRunningOrNot()
    {
        var folder = TestFolders.Create();
        var data = Path.Combine(folder.FullName, "data");
        string noted;
        (int Code, string Output) beside;
        using (await ServiceProcess.Start(data))
        {
            beside = await AuditChainTests.Run(NoEnvironment, "--data", data);
            noted = await Noted(data);
        }

        var alone = await AuditChainTests.Run(NoEnvironment, "--data", data);
        await File.AppendAllTextAsync(Path.Combine(data, "audit-anchors.txt"), $"7:{new string('a', 64)} 2031-03-14T12:00:00Z\n", TestContext.Current.CancellationToken);
        var cutOff = await AuditChainTests.Run(NoEnvironment, "--data", data);
        folder.Delete(recursive: true);

        Assert.Equal((0, 0, 1), (beside.Code, alone.Code, cutOff.Code));
        Assert.Contains("The history is whole: 1 entries, held against 1 noted earlier", alone.Output, StringComparison.Ordinal);
        Assert.EndsWith(noted, beside.Output.Trim(), StringComparison.Ordinal);
        Assert.Contains("broken at entry 2: it is missing: the end was cut off", cutOff.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Command_NothingThere_SaysSoAndEndsWithTwo()
    {
        var folder = TestFolders.Create();

        var (code, output) = await AuditChainTests.Run(NoEnvironment, "--data", folder.FullName);
        var (mistyped, hint) = await AuditChainTests.Run(NoEnvironment, "--data", folder.FullName, "--expect", "12");
        folder.Delete(recursive: true);

        Assert.Equal((2, 2), (code, mistyped));
        Assert.Contains("There is no cluster in", output, StringComparison.Ordinal);
        Assert.Contains("NUMBER:HASH", hint, StringComparison.Ordinal);
    }

    /// <summary>What the service wrote beside its database; it does so soon after it has started.</summary>
    private static async Task<string> Noted(string data)
    {
        var file = Path.Combine(data, "audit-anchors.txt");
        while (!File.Exists(file) || new FileInfo(file).Length == 0)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(50), TestContext.Current.CancellationToken);
        }

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        return (await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken)).Split(' ')[0];
    }
}
