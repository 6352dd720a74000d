using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Packages;
using Toepan.Api.Programme;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Analysis;
using Toepan.Domain.Channels;
using Toepan.Domain.Measures;

namespace Toepan.Api.Channels;

/// <summary>Every set of curves of a run, filtered as the measures are and cut to the evaluation window.</summary>
/// <param name="Sets">Vehicle first, then each occupant from head to foot.</param>
public sealed record RunCurves(IReadOnlyList<CurveSet> Sets);

/// <summary>The daily plots of a run, from the kept package and the flags in force.</summary>
public sealed class PlotService(IDbContextFactory<ProgrammeDb> contexts, ProgrammeRules rules)
{
    public async Task<Outcome<RunCurves>> Daily(Viewer viewer, string test, CancellationToken cancellation = default)
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

        var package = await PackageArchive.Read(context, current.PackageSha256, cancellation);
        var flags = await context.Set<ReductionRow>()
            .Where(reduction => reduction.Id == current.ReductionId).Select(reduction => reduction.Flags).SingleAsync(cancellation);
        var source = new ChannelSource(package, rules.Procedure(package.Programme.Procedure, package.Programme.Date), StoredJson.Read<ChannelFlag[]>(flags));
        var occupants = package.Programme.Occupants;
        var speed = (double)package.Programme.Conduct.ImpactSpeedKmh.Average();
        return new RunCurves([.. new VehicleCurves(speed, source).All(occupants), .. occupants.SelectMany(occupant => new OccupantCurves(occupant, source).All())]);
    }
}
