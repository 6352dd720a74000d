using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Analysis;
using Toepan.Domain.Analysis.Holds;
using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Channels;
using Toepan.Domain.Packages;

namespace Toepan.Api.Analysis;

/// <summary>Runs of one vehicle side by side.</summary>
public sealed class RepeatService(IDbContextFactory<ProgrammeDb> contexts, ProgrammeRules rules)
{
    /// <summary>Most runs compared at once.</summary>
    public const int MostRuns = 4;

    /// <param name="tests">Two to four different runs of one vehicle by one procedure; the first is the reference.</param>
    public async Task<Outcome<Repeats>> Get(Viewer viewer, IReadOnlyList<string> tests, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        if (tests.Count is < 2 or > MostRuns || tests.Distinct().Count() < tests.Count)
        {
            return Failure.BadRequest($"tests is '{string.Join(',', tests)}'; it names two to {MostRuns} different runs, separated by commas.");
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var wanted = tests.ToList();
        var runs = (await RunIndex.Load(context, context.Set<TestRunRow>().Where(run => wanted.Contains(run.Test)), cancellation)).ToDictionary(run => run.Test);
        if (wanted.Find(test => !runs.ContainsKey(test)) is { } unknown)
        {
            return Failure.NotFound("test", unknown);
        }

        var ordered = wanted.ConvertAll(test => runs[test]);
        return Differs(ordered) is { } other
            ? Failure.BadRequest($"{ordered[0].Test} is {ordered[0].Vehicle.Key} by {ordered[0].Procedure}, {other.Test} is {other.Vehicle.Key} by {other.Procedure}; repeats are runs of one vehicle by one procedure.")
            : await Compare(context, ordered, cancellation);
    }

    private static TestRunSummary? Differs(List<TestRunSummary> runs) =>
        runs.Find(run => run.Vehicle.Key != runs[0].Vehicle.Key || run.Procedure != runs[0].Procedure);

    private async Task<Repeats> Compare(ProgrammeDb context, List<TestRunSummary> runs, CancellationToken cancellation)
    {
        var scatter = new Dictionary<string, ScatterTable>();
        var (repeated, compared, scheme) = (new List<RepeatedRun>(), new List<RepeatRun>(), rules.DefaultScheme);
        foreach (var run in runs)
        {
            var facts = (await RunFacts.Find(context, rules, run.Test, cancellation))!;
            scheme = compared.Count == 0 ? facts.Scheme : scheme;
            if (!scatter.TryGetValue(facts.Scheme.Key, out var table))
            {
                scatter[facts.Scheme.Key] = table = await ScatterLoader.Load(context, facts.Scheme, cancellation);
            }

            var (package, flags) = await facts.Package(context, cancellation);
            var curves = Curves(package, new ChannelSource(package, facts.Procedure, flags), facts.SpeedKmh);
            var structure = (await CurrentRun.ReadReduction(context, facts.Current.ReductionId, cancellation)).Structure;
            compared.Add(new(run.Test, run.Occupants, facts.Inputs.Measures, curves));
            repeated.Add(new(run, facts.SpeedKmh, facts.EnergyRatio, structure, curves, Holds(run.Test, facts, table)));
        }

        return new(runs[0].Vehicle, runs[0].Procedure, scheme.Key, repeated, RepeatComparison.Of(compared, scheme));
    }

    private static RunHolds Holds(string test, RunFacts facts, ScatterTable scatter)
    {
        var model = LevelModelBuilder.Build(facts.Scheme, facts.Inputs, scatter);
        var sensitivity = Sensitivity.Of(model, facts.SpeedKmh, (double)facts.Procedure.NominalSpeedKmh);
        return new(test, LevelHolds.Of(facts.Scheme, model), sensitivity.MostLikely);
    }

    private static List<CurveSet> Curves(TestPackage package, ChannelSource source, double? speedKmh)
    {
        var occupants = package.Programme.Occupants;
        var vehicle = speedKmh is { } speed ? new VehicleCurves(speed, source).All(occupants) : [];
        return [.. vehicle, .. occupants.SelectMany(occupant => new OccupantCurves(occupant, source).All())];
    }
}
