using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>How a run was prepared.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Procedure">Procedure key.</param>
/// <param name="Edition">Edition whose items these are.</param>
/// <param name="Entries">Every item of the edition.</param>
/// <param name="Version">Number of the last record, for the next change; 0 = none yet.</param>
public sealed record Preparation(string Test, string Procedure, int Edition, IReadOnlyList<PreparationEntry> Entries, long Version);

/// <summary>Records how a run was prepared. Earlier records stay; the latest of an item counts.</summary>
public sealed class PreparationService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    public async Task<Outcome<Preparation>> Get(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await Edition(context, test, cancellation) is { } edition ? await Read(context, test, edition, cancellation) : Failure.NotFound("test", test);
    }

    /// <summary>
    /// Records items by key; one left out or unchanged stays as it is, an empty text takes a record back. Refused as a whole where one cannot be read, is
    /// unknown, or was recorded by somebody else after <paramref name="version"/>. Engineers, managers and administrators.
    /// </summary>
    public async Task<Outcome<Preparation>> Record(
        Viewer viewer, string test, IReadOnlyDictionary<string, string> items, long version, CancellationToken cancellation = default)
    {
        if (Access.ToMeasure(viewer, "record preparation") is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await RunLock.Begin(context, test, cancellation);
        if (await Edition(context, test, cancellation) is not { } edition)
        {
            return Failure.NotFound("test", test);
        }

        var rows = await PreparationIndex.Rows(context, test, cancellation);
        var before = rows.GroupBy(row => row.Item).ToDictionary(group => group.Key, group => group.Last());
        var changed = items.Where(item => item.Value.Trim() != (before.GetValueOrDefault(item.Key)?.Text ?? "")).ToList();
        if ((Check(edition, changed) ?? Overtaken(changed, before, version)) is { } fault)
        {
            return fault;
        }

        if (changed.Count > 0)
        {
            await Write(context, viewer, test, changed, before, cancellation);
            await transaction.CommitAsync(cancellation);
        }

        return await Read(context, test, edition, cancellation);
    }

    private async Task Write(
        ProgrammeDb context, Viewer viewer, string test, List<KeyValuePair<string, string>> changed, Dictionary<string, PreparationRow> before,
        CancellationToken cancellation)
    {
        var at = time.GetUtcNow();
        context.AddRange(changed.Select(item => new PreparationRow
        {
            Test = test, Item = item.Key, Text = item.Value.Trim(), RecordedBy = viewer.Name, RecordedAt = at,
        }));
        await context.SaveChangesAsync(cancellation);
        var note = new AuditNote(
            "record preparation", $"test/{test}", changed.ToDictionary(item => item.Key, item => before.GetValueOrDefault(item.Key)?.Text),
            changed.ToDictionary(item => item.Key, item => item.Value.Trim()));
        await audit.Append(context, viewer, note, cancellation);
    }

    private static Failure? Check(ProcedureEdition edition, List<KeyValuePair<string, string>> items)
    {
        foreach (var (key, text) in items)
        {
            if (edition.Preparation.FirstOrDefault(known => known.Item == key) is not { } item)
            {
                return Failure.BadRequest($"'{key}' is no preparation item of {edition.Key} edition {edition.Edition}.");
            }

            if (text.Trim().Length > 0 && (PreparationJudge.Fault(item, text.Trim()) is { } fault))
            {
                return Failure.BadRequest(fault);
            }
        }

        return null;
    }

    private static Failure? Overtaken(List<KeyValuePair<string, string>> changed, Dictionary<string, PreparationRow> before, long version)
    {
        var latest = changed.Select(item => before.GetValueOrDefault(item.Key)?.Id ?? 0).DefaultIfEmpty().Max();
        return latest > version
            ? new Failure(
                FailureKind.Conflict, "Changed meanwhile",
                $"Somebody recorded {string.Join(", ", changed.Where(item => before.GetValueOrDefault(item.Key)?.Id > version).Select(item => item.Key))} after you opened the form. Nothing of yours was kept: look again.")
            : null;
    }

    private static async Task<Preparation> Read(ProgrammeDb context, string test, ProcedureEdition edition, CancellationToken cancellation)
    {
        var entries = await PreparationIndex.Load(context, test, edition, cancellation);
        var version = await context.Set<PreparationRow>().Where(row => row.Test == test).MaxAsync(row => (long?)row.Id, cancellation);
        return new Preparation(test, edition.Key, edition.Edition, entries, version ?? 0);
    }

    /// <summary>The edition the run was planned under, or judged by where it was not planned.</summary>
    private static async Task<ProcedureEdition?> Edition(ProgrammeDb context, string test, CancellationToken cancellation)
    {
        if (await context.Set<PlannedRunRow>().AsNoTracking().SingleOrDefaultAsync(row => row.Test == test, cancellation) is { } plan)
        {
            return ProcedureLibrary.Find(plan.Procedure, plan.ProcedureEdition);
        }

        var run = await context.Set<TestRunRow>().AsNoTracking().SingleOrDefaultAsync(row => row.Test == test, cancellation);
        return run is null ? null : ProcedureLibrary.InForce(run.Procedure, run.Date);
    }
}
