using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Independent;

/// <summary>
/// The served figures of more than a hundred made packages against an independent calculation in Python and scipy, written from the text of
/// methods edition 1 alone: every measure, displacement, verdict, level and cap, relative difference at most 1e-6, presence exactly.
/// </summary>
public sealed class SecondOpinionTests(PostgresFixture postgres)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>The calculator's own ground: closed forms and worked numbers of the fact sheet of published methods, section 16.</summary>
    [Fact]
    public async Task Calculator_WorkedNumbers_Hold()
    {
        var (exitCode, output) = await Script.Run("selfcheck.py", [], Cancel);

        Assert.True(exitCode == 0, output);
    }

    [Fact]
    public async Task Service_MadePackages_AgreesWithIndependentCalculation()
    {
        await using var host = await ApiHost.Start(postgres, listen: true);
        var token = await host.Token([Role.Engineer, Role.Analyst]);

        var (exitCode, output) = await Script.Run("compare.py", ["--url", host.Address.ToString(), "--token", token], Cancel);

        Assert.True(exitCode == 0, output);
    }

    /// <summary>
    /// Each hostile package answers within ten seconds, is refused or kept as its case says, and leaves the service healthy and nothing behind.
    /// The megahertz recordings are judged by hostile.py against a release build: their ten seconds say nothing in a debug one.
    /// </summary>
    [Fact]
    public async Task Service_HostilePackages_RefusesOrNamesTheDefect()
    {
        await using var host = await ApiHost.Start(postgres, listen: true);
        var token = await host.Token([Role.Engineer, Role.Analyst]);

        var (exitCode, output) = await Script.Run("hostile.py", ["--url", host.Address.ToString(), "--token", token, "--without", "fast_sampling"], Cancel);

        Assert.True(exitCode == 0, output);
    }
}
