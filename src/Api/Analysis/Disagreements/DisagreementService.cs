using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Disagreements;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;

namespace Toepan.Api.Analysis.Disagreements;

/// <summary>A contradiction, and whose.</summary>
public sealed record FoundDisagreement(Disagreement Found, VehicleName Vehicle, bool Summary);

/// <summary>What was found in one class.</summary>
/// <param name="Runs">Runs looked at.</param>
public sealed record ClassFindings(string Class, string Title, int Runs, IReadOnlyList<FoundDisagreement> Found);

/// <summary>Runs that contradict themselves or their class: drivers of valid runs and of historic summaries.</summary>
public sealed class DisagreementService(IDbContextFactory<ProgrammeDb> contexts, ProgrammeMeasures measures)
{
    /// <summary>For every class, or one.</summary>
    public async Task<Outcome<IReadOnlyList<ClassFindings>>> Find(Viewer viewer, string? vehicleClass = null, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var classes = await context.Set<VehicleClassRow>().AsNoTracking().Where(row => vehicleClass == null || row.Key == vehicleClass).OrderBy(row => row.Title).ToListAsync(cancellation);
        if (vehicleClass is not null && classes.Count == 0)
        {
            return Failure.NotFound("vehicle class", vehicleClass);
        }

        var found = new List<ClassFindings>();
        foreach (var row in classes)
        {
            var rows = await measures.Load(viewer, new MeasureQuestion { Classes = [row.Key], Measures = Looked }, cancellation);
            if (rows.Value is not { } table)
            {
                return rows.Failure!;
            }

            found.Add(await InClass(context, row, table, cancellation));
        }

        return Outcome.List<ClassFindings>(found);
    }

    // What outliers are looked for among: a list that fits one question, without the points that only some runs have.
    private static IReadOnlyList<string> Looked { get; } =
    [
        .. MeasureCatalogue.Entries.Select(entry => entry.Code).Where(code => !code.Contains('<', StringComparison.Ordinal) && !code.StartsWith("conduct.", StringComparison.Ordinal))
            .Union(ClassDisagreements.Needed),
    ];

    private static async Task<ClassFindings> InClass(ProgrammeDb context, VehicleClassRow row, MeasureRows table, CancellationToken cancellation)
    {
        var runs = new List<ClassRun>();
        foreach (var measured in table.Rows.DistinctBy(one => one.Test))
        {
            var values = table.Measures.Select((code, i) => (code, value: measured.Values[i])).Where(pair => pair.value is { } number && double.IsFinite(number))
                .ToDictionary(pair => pair.code, pair => pair.value!.Value, StringComparer.Ordinal);
            var (findings, checks) = measured.Kind == ResultKind.Run ? await Film(context, measured, cancellation) : ([], []);
            runs.Add(new(measured.Test, values, findings, checks, measured.Kind == ResultKind.Summary));
        }

        var vehicles = table.Rows.DistinctBy(one => one.Test).ToDictionary(one => one.Test, one => one.Vehicle, StringComparer.Ordinal);
        return new(row.Key, row.Title, runs.Count, [.. ClassDisagreements.Of(runs).Select(one => new FoundDisagreement(one, vehicles[one.Test], runs.Find(run => run.Test == one.Test)!.Summary))]);
    }

    private static async Task<(IReadOnlyList<Finding> Findings, IReadOnlyList<CrossCheck> Checks)> Film(ProgrammeDb context, MeasuredRow run, CancellationToken cancellation)
    {
        var current = (await CurrentRun.Find(context, run.Test, cancellation))!;
        var reduction = await CurrentRun.ReadReduction(context, current.ReductionId, cancellation);
        var findings = await RunFindings.Standing(context, run.Test, current.PackageSha256, cancellation);
        return ([.. findings.Where(finding => finding.Position is null || finding.Position == run.Position)], [.. reduction.CrossChecks.Where(check => check.Position == run.Position)]);
    }
}
