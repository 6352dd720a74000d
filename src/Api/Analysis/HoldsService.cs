using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Holds;
using Toepan.Domain.Analysis.Keystones;

namespace Toepan.Api.Analysis;

/// <summary>Whether a run's levels would come out the same again.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Report">Chances.</param>
/// <param name="MostLikely">The figure most likely to change the overall level by itself; null where none has a chance.</param>
public sealed record RunHolds(string Test, HoldReport Report, SensitivityRow? MostLikely);

/// <summary>How far each figure of a run would have to move.</summary>
public sealed record RunSensitivity(string Test, string Scheme, SensitivityReport Report);

/// <summary>Which single transducer or reference point carries a run's level.</summary>
public sealed record RunKeystones(string Test, string Scheme, KeystoneReport Report);

/// <summary>"Would it come out the same again?" for one run, by the scheme of its current rating.</summary>
public sealed class HoldsService(IDbContextFactory<ProgrammeDb> contexts, ProgrammeRules rules)
{
    /// <summary>Chances that the levels hold in a repeated run, and what a repeat would be worth.</summary>
    /// <param name="vehicleCost">Cost of a vehicle in any currency; null = not given.</param>
    public async Task<Outcome<RunHolds>> Holds(Viewer viewer, string test, double? vehicleCost = null, CancellationToken cancellation = default)
    {
        if (vehicleCost is { } cost && !(double.IsFinite(cost) && cost > 0))
        {
            return Failure.BadRequest($"vehicleCost is {vehicleCost}; it is a number above zero.");
        }

        return await With<RunHolds>(viewer, test, async (context, facts) =>
        {
            var model = await facts.Model(context, cancellation);
            var sensitivity = Of(facts, model);
            return new RunHolds(test, LevelHolds.Of(facts.Scheme, model, vehicleCost), sensitivity.MostLikely);
        }, cancellation);
    }

    /// <summary>How far each figure would have to move, alone, to change the overall level; what the speed could explain.</summary>
    public Task<Outcome<RunSensitivity>> Sensitivity(Viewer viewer, string test, CancellationToken cancellation = default) =>
        With<RunSensitivity>(viewer, test, async (context, facts) =>
            new RunSensitivity(test, facts.Scheme.Key, Of(facts, await facts.Model(context, cancellation))), cancellation);

    /// <summary>Each transducer and reference point left out in turn.</summary>
    public Task<Outcome<RunKeystones>> Keystones(Viewer viewer, string test, CancellationToken cancellation = default) =>
        With<RunKeystones>(viewer, test, async (context, facts) =>
        {
            var (package, flags) = await facts.Package(context, cancellation);
            return new RunKeystones(test, facts.Scheme.Key, KeystoneAnalysis.Of(package, facts.Procedure, flags, facts.Scheme));
        }, cancellation);

    private static SensitivityReport Of(RunFacts facts, LevelModel model) =>
        Domain.Analysis.Holds.Sensitivity.Of(model, facts.SpeedKmh, (double)facts.Procedure.NominalSpeedKmh);

    private async Task<Outcome<T>> With<T>(Viewer viewer, string test, Func<ProgrammeDb, RunFacts, Task<Outcome<T>>> read, CancellationToken cancellation)
        where T : class
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await RunFacts.Find(context, rules, test, cancellation) is { } facts ? await read(context, facts) : Failure.NotFound("test", test);
    }
}
