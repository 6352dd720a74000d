using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Programme;
using Toepan.Api.Ratings;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Sheets;

/// <summary>What a consumer sheet of a run would say.</summary>
public sealed class SheetService(IDbContextFactory<ProgrammeDb> contexts, TimeProvider time)
{
    public async Task<Outcome<SheetPreview>> Preview(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await CurrentRun.Find(context, test, cancellation) is not { } current)
        {
            return Failure.NotFound("test", test);
        }

        var reduction = await CurrentRun.ReadReduction(context, current.ReductionId, cancellation);
        var key = await context.Set<Programme.Tables.TestRunRow>().Where(run => run.Test == test).Select(run => run.VehicleKey).SingleAsync(cancellation);
        var vehicle = (await VehicleService.Find(context, key, cancellation))!;
        return new SheetPreview(
            vehicle.Runs.Single(run => run.Test == test), vehicle.Vehicle, vehicle.Twins, await RatingService.Read(context, current.RatingId, cancellation),
            await CurrentRun.ReadMeasures(context, current.ReductionId, cancellation), reduction.Structure,
            await RunFindings.Standing(context, current.Test, current.PackageSha256, cancellation), reduction.Conduct, reduction.MethodEdition,
            current.ReductionId, current.PackageSha256, time.GetUtcNow());
    }
}
