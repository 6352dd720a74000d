using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Packages;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Ratings;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Holds;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis;

/// <summary>The stored facts of a run that its current rating was made from, and the scheme that made it.</summary>
internal sealed record RunFacts(CurrentRun Current, Scheme Scheme, RatingInputs Inputs, ProcedureEdition Procedure, double? SpeedKmh, double? EnergyRatio)
{
    private const string SpeedCode = "conduct.speed";
    private const string EnergyCode = "conduct.energyratio";

    /// <summary>Null where there is no such run.</summary>
    public static async Task<RunFacts?> Find(ProgrammeDb context, ProgrammeRules rules, string test, CancellationToken cancellation)
    {
        if (await CurrentRun.Find(context, test, cancellation) is not { } current)
        {
            return null;
        }

        var rating = await RatingService.Read(context, current.RatingId, cancellation);
        var programme = StoredJson.Read<ProgrammeDocument>(await context.Set<PackageRow>()
            .Where(row => row.Sha256 == current.PackageSha256).Select(row => row.Programme).SingleAsync(cancellation));
        var measures = await CurrentRun.ReadMeasures(context, current.ReductionId, cancellation);
        var inputs = new RatingInputs(
            rating.Valid, programme.Occupants, measures, await RunFindings.Standing(context, current.Test, current.PackageSha256, cancellation));
        return new(
            current, await SchemeOf(context, rules, rating.Scheme, cancellation), inputs, rules.Procedures[programme.Procedure],
            measures.Find(measure => measure.Code == SpeedCode)?.Value, measures.Find(measure => measure.Code == EnergyCode)?.Value);
    }

    private static async Task<Scheme> SchemeOf(ProgrammeDb context, ProgrammeRules rules, string key, CancellationToken cancellation) =>
        (await SchemeStore.Find(context, key, cancellation))?.Scheme ?? rules.DefaultScheme;

    /// <summary>The levels as a function of the run's figures, with the scatter of the programme.</summary>
    public async Task<LevelModel> Model(ProgrammeDb context, CancellationToken cancellation) =>
        LevelModelBuilder.Build(Scheme, Inputs, await ScatterLoader.Load(context, Scheme, cancellation));

    /// <summary>The package and the channel flags the current reduction was computed from.</summary>
    public async Task<(TestPackage Package, IReadOnlyList<ChannelFlag> Flags)> Package(ProgrammeDb context, CancellationToken cancellation)
    {
        var flags = await context.Set<ReductionRow>().Where(row => row.Id == Current.ReductionId).Select(row => row.Flags).SingleAsync(cancellation);
        return (await RunFindings.Package(context, Current.Test, Current.PackageSha256, cancellation), StoredJson.Read<ChannelFlag[]>(flags));
    }
}
