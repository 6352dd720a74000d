using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Programme;

/// <summary>A vehicle class and how much of it is tested.</summary>
/// <param name="FromHistoricResults">Whether only historic results made the programme know it.</param>
public sealed record VehicleClassSummary(string Key, string Title, int Vehicles, int Tests, bool FromHistoricResults = false);

/// <summary>Vehicle classes of the programme.</summary>
public sealed partial class VehicleClassService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit)
{
    /// <summary>Longest title, characters.</summary>
    public const int LongestTitle = 100;

    /// <summary>Every class, by title.</summary>
    public async Task<Outcome<IReadOnlyList<VehicleClassSummary>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return Outcome.List<VehicleClassSummary>(await context.Set<VehicleClassRow>()
            .OrderBy(row => row.Title)
            .Select(row => new VehicleClassSummary(
                row.Key, row.Title,
                context.Set<VehicleRow>().Count(vehicle => vehicle.ClassKey == row.Key),
                context.Set<TestRunRow>().Count(run => run.Vehicle!.ClassKey == row.Key),
                context.Set<HistoricOriginRow>().Any(origin => origin.Kind == HistoricKind.VehicleClass && origin.Key == row.Key)))
            .ToListAsync(cancellation));
    }

    /// <summary>Adds a class; managers and administrators only.</summary>
    public async Task<Outcome<VehicleClassSummary>> Add(Viewer viewer, string key, string title, CancellationToken cancellation = default)
    {
        if ((Access.ToArrange(viewer, "add vehicle classes") ?? Check(key, title)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        var added = await context.Database.ExecuteSqlAsync(
            $"INSERT INTO lab.vehicle_class (key, title) VALUES ({key}, {title.Trim()}) ON CONFLICT (key) DO NOTHING", cancellation);
        if (added == 0)
        {
            return new Failure(FailureKind.Conflict, "Class exists", $"There is a class '{key}' already.");
        }

        await audit.Append(context, viewer, new AuditNote("add class", $"class/{key}", null, new { title = title.Trim() }), cancellation);
        await transaction.CommitAsync(cancellation);
        return new VehicleClassSummary(key, title.Trim(), 0, 0);
    }

    private static Failure? Check(string? key, string? title)
    {
        if (!Key().IsMatch(key ?? ""))
        {
            return Failure.BadRequest($"The key '{key}' is not 2 to 60 lower-case letters, digits and hyphens.");
        }

        return Texts.Check("A title", title, LongestTitle);
    }

    [GeneratedRegex(@"\A[a-z0-9][a-z0-9-]{1,59}\z")]
    private static partial Regex Key();
}
