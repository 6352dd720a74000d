using Microsoft.EntityFrameworkCore;
using Toepan.Api.Analysis;
using Toepan.Api.Packages;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Sheets;

namespace Toepan.Api.Sheets;

/// <summary>What a consumer sheet of a run would say.</summary>
public sealed class SheetService(IDbContextFactory<ProgrammeDb> contexts, ProgrammeRules rules, TimeProvider time)
{
    public async Task<Outcome<SheetPreview>> Preview(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await Preview(context, test, cancellation) is { } preview ? preview : Failure.NotFound("test", test);
    }

    /// <summary>
    /// The frozen document of a sheet, by the current reduction and rating. Its hash (<see cref="SheetDocumentJson.Hash"/>) is what gets signed; composing it again
    /// from changed figures gives another one. Peers are all rated vehicles of similar mass, for eyes inside the laboratory; a release
    /// names only those that are public: <see cref="SheetPeersComposer.Compose"/>.
    /// </summary>
    /// <param name="key">Test code of a run, or key of a vehicle: then the run that rates it; of a twin, the sheet it shares.</param>
    public async Task<Outcome<SheetDocument>> Document(Viewer viewer, string key, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await TestOf(context, key, cancellation) is not { } test || await Preview(context, test, cancellation) is not { } preview)
        {
            return Failure.NotFound("test or rated vehicle", key);
        }

        var document = await Compose(context, preview, cancellation);
        return document with { Peers = SheetPeersComposer.Compose(document, await Rated(context, cancellation)) };
    }

    /// <summary>The document of a run without peers, read in a context of the caller's; null where there is no such run.</summary>
    internal async Task<SheetDocument?> Compose(ProgrammeDb context, string test, CancellationToken cancellation) =>
        await Preview(context, test, cancellation) is { } preview ? await Compose(context, preview, cancellation) : null;

    private async Task<SheetDocument> Compose(ProgrammeDb context, SheetPreview preview, CancellationToken cancellation)
    {
        var facts = await RunFacts.Find(context, rules, preview.Run.Test, cancellation);
        var model = await facts!.Model(context, cancellation);
        return SheetComposer.Compose(preview.Facts(facts.Scheme, facts.Current.RatingId, model));
    }

    private static async Task<string?> TestOf(ProgrammeDb context, string key, CancellationToken cancellation)
    {
        if (await CurrentRun.Find(context, key, cancellation) is { } run)
        {
            return run.Test;
        }

        return await VehicleService.Find(context, key, cancellation) is { } vehicle ? vehicle.RatedBy ?? vehicle.Shared?.RatedBy : null;
    }

    private async Task<SheetPreview?> Preview(ProgrammeDb context, string test, CancellationToken cancellation)
    {
        if (await CurrentRun.Find(context, test, cancellation) is not { } current)
        {
            return null;
        }

        var reduction = await CurrentRun.ReadReduction(context, current.ReductionId, cancellation);
        var key = await context.Set<TestRunRow>().Where(run => run.Test == test).Select(run => run.VehicleKey).SingleAsync(cancellation);
        var vehicle = (await VehicleService.Find(context, key, cancellation))!;
        return new SheetPreview(
            vehicle.Runs.Single(run => run.Test == test), vehicle.Vehicle, vehicle.Twins, await RatingService.Read(context, current.RatingId, cancellation),
            await CurrentRun.ReadMeasures(context, current.ReductionId, cancellation), reduction.Structure,
            await RunFindings.Standing(context, current.Test, current.PackageSha256, cancellation), reduction.Conduct, reduction.MethodEdition,
            current.ReductionId, current.PackageSha256, time.GetUtcNow())
        {
            ValidRuns = [.. vehicle.Runs.Where(run => run.Valid).OrderBy(run => run.Date).ThenBy(run => run.Test, StringComparer.Ordinal)],
            RatedBy = vehicle.RatedBy,
        };
    }

    // Every vehicle whose own run rates it, by kerb mass.
    private static async Task<IReadOnlyList<SheetPeer>> Rated(ProgrammeDb context, CancellationToken cancellation)
    {
        var masses = await context.Set<VehicleRow>().AsNoTracking().Where(row => row.KerbMassKg != null)
            .ToDictionaryAsync(row => row.Key, row => (double)row.KerbMassKg!.Value, cancellation);
        var runs = await RunIndex.Load(context, context.Set<TestRunRow>(), cancellation);
        return
        [
            .. from run in runs
               group run by run.Vehicle.Key into vehicle
               let rated = VehicleService.RatedBy([.. vehicle])
               where rated?.Overall is not null && masses.ContainsKey(vehicle.Key)
               select new SheetPeer(vehicle.Key, rated.Vehicle.Title, rated.Overall!.Value, masses[vehicle.Key]),
        ];
    }
}
