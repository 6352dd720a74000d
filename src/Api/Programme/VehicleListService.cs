using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Lists;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>A file to download.</summary>
public sealed record ListFile(byte[] Bytes, string MediaType, string Name);

/// <summary>The vehicle list as a file, out and in.</summary>
public sealed class VehicleListService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    public const int LargestFile = 2 << 20;
    public const string Spreadsheet = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private const string ImportLock = "vehicle list";

    /// <summary>Vehicles of a class, or all, by key; formula-like text is neutralised.</summary>
    public async Task<Outcome<ListFile>> Export(Viewer viewer, string? vehicleClass, bool spreadsheet, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var vehicles = await context.Set<VehicleRow>().AsNoTracking().Where(row => vehicleClass == null || row.ClassKey == vehicleClass)
            .OrderBy(row => row.Key).ToListAsync(cancellation);
        List<IReadOnlyList<string>> rows = [VehicleText.Columns, .. vehicles.Select(Cells)];
        return spreadsheet
            ? new ListFile(SheetList.Write(rows), Spreadsheet, "vehicles.xlsx")
            : new ListFile(CsvList.Write(rows), MediaTypes.Csv, "vehicles.csv");
    }

    /// <summary>
    /// Says what a list changes and, unless it is a dry run, does it: all rows or none. Managers and administrators. Refused where a row cannot be
    /// taken, or where the digest of a dry run is named and something else would change by now.
    /// </summary>
    public async Task<Outcome<VehicleImport>> Import(Viewer viewer, IncomingList list, CancellationToken cancellation = default)
    {
        if (Access.ToArrange(viewer, "import vehicles") is { } refusal)
        {
            return refusal;
        }

        if (list.Bytes.Length > LargestFile)
        {
            return new Failure(FailureKind.TooLarge, "List too large", $"The list has {list.Bytes.Length} bytes; at most {LargestFile} are taken.");
        }

        var table = list.Spreadsheet ? SheetList.Read(list.Bytes) : CsvList.Read(list.Bytes);
        if (VehicleImportPlan.Fault(table) is { } fault)
        {
            return new Failure(FailureKind.Unreadable, "The list cannot be read", fault);
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtextextended({ImportLock}, 0))", cancellation);
        var known = await context.Set<VehicleRow>().ToDictionaryAsync(row => row.Key, cancellation);
        var classes = await context.Set<VehicleClassRow>().Select(row => row.Key).ToListAsync(cancellation);
        var plan = new VehicleImportPlan(known, classes.ToHashSet());
        var import = plan.Of(table);
        if (list.DryRun)
        {
            return import;
        }

        if (Refusal(import, list.Digest) is { } no)
        {
            return no;
        }

        if (!await Apply(context, viewer, plan, known, cancellation))
        {
            return Overtaken();
        }

        await transaction.CommitAsync(cancellation);
        return import with { Applied = true };
    }

    private async Task<bool> Apply(
        ProgrammeDb context, Viewer viewer, VehicleImportPlan plan, Dictionary<string, VehicleRow> known, CancellationToken cancellation)
    {
        var (notes, at) = (new List<AuditNote>(), time.GetUtcNow());
        foreach (var (key, facts) in plan.Writes)
        {
            var row = known.GetValueOrDefault(key);
            notes.Add(new AuditNote(row is null ? "add vehicle" : "change vehicle", $"vehicle/{key}", row?.Facts(), facts));
            row ??= context.Add(new VehicleRow { Key = key, CreatedAt = at }).Entity;
            row.Take(facts);
        }

        try
        {
            await context.SaveChangesAsync(cancellation);
        }
        catch (DbUpdateConcurrencyException)
        {
            return false;
        }

        foreach (var note in notes)
        {
            await audit.Append(context, viewer, note, cancellation);
        }

        return true;
    }

    private static Failure? Refusal(VehicleImport import, string? digest)
    {
        if (!import.Acceptable)
        {
            var refused = import.Rows.Where(row => row.Act == ImportAct.Refused).ToList();
            return new Failure(FailureKind.Unreadable, "The list cannot be taken", $"{refused.Count} of {import.Rows.Count} rows cannot be taken, so none was.")
            {
                Problems = [.. refused.SelectMany(row => row.Faults.Select(text => new Problem(ProblemSeverity.Error, "vehicles.row", text, "vehicles", row.Line)))],
            };
        }

        return digest is null || digest == import.Digest ? null : Overtaken();
    }

    private static Failure Overtaken() => new(
        FailureKind.Conflict, "Changed meanwhile", "The vehicles changed after the dry run, so the list would do something else by now. Nothing was kept: try it again.");

    private static IReadOnlyList<string> Cells(VehicleRow row)
    {
        var texts = VehicleText.Write(row.Facts());
        return [.. VehicleText.Columns.Select(column => column == VehicleText.Key ? row.Key : texts[column])];
    }
}
