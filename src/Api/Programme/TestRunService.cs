using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>Test runs: lists and one in full.</summary>
public sealed class TestRunService(IDbContextFactory<ProgrammeDb> contexts)
{
    private static readonly IReadOnlyList<string> States = [.. Enum.GetValues<TestState>().Select(state => state.Word())];

    /// <summary>The runs that pass the filter, by test code.</summary>
    public async Task<Outcome<IReadOnlyList<TestRunSummary>>> List(
        Viewer viewer, TestRunFilter filter, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        if (filter.State is { } state && !States.Contains(state))
        {
            return Failure.BadRequest($"state is '{state}'; it is one of {string.Join(", ", States)}.");
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var runs = await RunIndex.Load(context, Filtered(context, filter), cancellation);
        return Outcome.List(Matching(runs, filter));
    }

    public async Task<Outcome<TestRunDetail>> Get(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var runs = await RunIndex.Load(context, context.Set<TestRunRow>().Where(run => run.Test == test), cancellation);
        if (runs is not [var run])
        {
            return Failure.NotFound("test", test);
        }

        var current = (await CurrentRun.Find(context, test, cancellation))!;
        var package = await context.Set<PackageRow>().AsNoTracking().SingleAsync(row => row.Sha256 == current.PackageSha256, cancellation);
        var reduction = await CurrentRun.ReadReduction(context, current.ReductionId, cancellation);
        var programme = StoredJson.Read<ProgrammeDocument>(package.Programme);
        return new TestRunDetail(
            run, reduction.ProcedureEdition, programme.Conduct, reduction.Conduct, await RepeatedBy(context, test, cancellation),
            [.. StoredJson.Read<Problem[]>(package.Problems), .. reduction.Problems], reduction.Channels, reduction.CrossChecks,
            reduction.HeadContacts, Facts(package), await RunHistory.Read(context, test, cancellation));
    }

    private static IQueryable<TestRunRow> Filtered(ProgrammeDb context, TestRunFilter filter) => context.Set<TestRunRow>()
        .Where(run => filter.Class == null || run.Vehicle!.ClassKey == filter.Class)
        .Where(run => filter.Vehicle == null || run.VehicleKey == filter.Vehicle);

    private static IReadOnlyList<TestRunSummary> Matching(IReadOnlyList<TestRunSummary> runs, TestRunFilter filter) =>
        [.. runs.Where(run => (filter.State is null || run.State == filter.State) && (filter.Valid is null || run.Valid == filter.Valid))];

    private static Task<List<string>> RepeatedBy(ProgrammeDb context, string test, CancellationToken cancellation) => context.Set<TestRunRow>()
        .Where(run => run.RepeatOf == test).OrderBy(run => run.Test).Select(run => run.Test).ToListAsync(cancellation);

    private static PackageFacts Facts(PackageRow package) => new(
        package.Sha256, package.Length, package.UploadedAt, package.UploadedBy, StoredJson.Read<Attachment[]>(package.Attachments));
}
