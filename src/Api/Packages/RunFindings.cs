using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages;

/// <summary>The findings of a run as they count: the package's with what people changed beside it. Whatever reads findings reads them here.</summary>
internal static class RunFindings
{
    /// <summary>The findings that count over one package of the run.</summary>
    public static async Task<IReadOnlyList<Finding>> Standing(ProgrammeDb context, string test, string sha256, CancellationToken cancellation) =>
        FindingLedger.Standing(await Written(context, sha256, cancellation), await Changes(context, test, cancellation));

    /// <summary>Every finding with its changes, those that do not count too.</summary>
    public static async Task<IReadOnlyList<KeptFinding>> All(ProgrammeDb context, string test, string sha256, CancellationToken cancellation) =>
        FindingLedger.Of(await Written(context, sha256, cancellation), await Changes(context, test, cancellation));

    /// <summary>A package as it counts: as uploaded, but with the findings that count.</summary>
    public static async Task<TestPackage> Package(ProgrammeDb context, string test, string sha256, CancellationToken cancellation) =>
        await Over(context, test, await PackageArchive.Read(context, sha256, cancellation), cancellation);

    /// <summary>A package just read, with the changes of its run over its findings.</summary>
    public static async Task<TestPackage> Over(ProgrammeDb context, string test, TestPackage package, CancellationToken cancellation) =>
        await Changes(context, test, cancellation) is { Count: > 0 } changes
            ? package with { Findings = FindingLedger.Standing(package.Findings, changes) }
            : package;

    /// <summary>The findings that count of many runs at once, by test code.</summary>
    public static async Task<IReadOnlyDictionary<string, IReadOnlyList<Finding>>> Standing(
        ProgrammeDb context, IReadOnlyDictionary<string, string> sha256ByTest, CancellationToken cancellation)
    {
        string[] tests = [.. sha256ByTest.Keys], packages = [.. sha256ByTest.Values.Distinct()];
        var written = (await context.Set<FindingRow>().AsNoTracking().Where(row => packages.Contains(row.PackageSha256))
            .OrderBy(row => row.Number).ToListAsync(cancellation)).ToLookup(row => row.PackageSha256);
        var changes = (await context.Set<FindingChangeRow>().AsNoTracking().Where(row => tests.Contains(row.Test))
            .OrderBy(row => row.Id).ToListAsync(cancellation)).ToLookup(row => row.Test);
        return sha256ByTest.ToDictionary(
            pair => pair.Key,
            pair => FindingLedger.Standing([.. written[pair.Value].Select(row => row.ToFinding())], [.. changes[pair.Key].Select(row => row.ToChange())]));
    }

    private static async Task<List<Finding>> Written(ProgrammeDb context, string sha256, CancellationToken cancellation)
    {
        var rows = await context.Set<FindingRow>().AsNoTracking()
            .Where(finding => finding.PackageSha256 == sha256).OrderBy(finding => finding.Number).ToListAsync(cancellation);
        return rows.ConvertAll(row => row.ToFinding());
    }

    private static async Task<List<FindingChange>> Changes(ProgrammeDb context, string test, CancellationToken cancellation)
    {
        var rows = await context.Set<FindingChangeRow>().AsNoTracking()
            .Where(change => change.Test == test).OrderBy(change => change.Id).ToListAsync(cancellation);
        return rows.ConvertAll(row => row.ToChange());
    }
}
