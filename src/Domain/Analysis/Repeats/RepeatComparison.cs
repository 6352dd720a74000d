using Toepan.Domain.Analysis.Signals;
using Toepan.Domain.Measures;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Repeats;

/// <summary>One curve of a run against the same curve of the first run.</summary>
/// <param name="Key">Key of the curve's set, e.g. <c>head.resultant</c>.</param>
/// <param name="Name">Name of the curve within its set.</param>
/// <param name="Position">Seat position, or null for the vehicle.</param>
/// <param name="Unit">Unit of both.</param>
/// <param name="Reference">The first run.</param>
/// <param name="Compared">The other run.</param>
/// <param name="Answer">Scores, or why there are none.</param>
public sealed record ComparedCurve(string Key, string Name, int? Position, string Unit, string Reference, string Compared, SignalAnswer Answer);

/// <summary>
/// Runs of one vehicle by one procedure side by side. Measures of a seat are set against one another only where the same dummy sat there in
/// every run. Methods edition 1, "Repeats".
/// </summary>
public sealed class RepeatComparison
{
    /// <summary>Window of signal comparison, s from contact: the crash is over within it.</summary>
    public const double FromS = 0;

    /// <inheritdoc cref="FromS"/>
    public const double ToS = 0.150;

    // Velocities of the dummies are drawn over the vehicle's on daily plots; here each channel counts once.
    private const string VelocitySet = "vehicle.velocity";
    private const string VehicleCurve = "vehicle";

    private readonly IReadOnlyList<RepeatRun> runs;
    private readonly SchemeLimits limits;

    private RepeatComparison(IReadOnlyList<RepeatRun> runs, Scheme scheme)
    {
        (this.runs, limits) = (runs, new(scheme));
        Measures = [.. CompareMeasures()];
        Curves = [.. CompareCurves()];
        Parts = new PartVerdicts(scheme, this, DummyAt).All();
    }

    /// <summary>Every measure that at least two runs have a value of, in the reducer's order.</summary>
    public IReadOnlyList<RepeatedMeasure> Measures { get; }

    /// <summary>Curves of every run but the first against the first run's.</summary>
    public IReadOnlyList<ComparedCurve> Curves { get; }

    /// <summary>Whether structure, pulse and dummies repeat.</summary>
    public IReadOnlyList<PartVerdict> Parts { get; }

    /// <param name="runs">Two or more; the first is the reference.</param>
    public static RepeatComparison Of(IReadOnlyList<RepeatRun> runs, Scheme scheme)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(runs.Count, 2, nameof(runs));
        return new(runs, scheme);
    }

    /// <summary>The limit a measure is held against, or null.</summary>
    public double? LimitOf(RepeatedMeasure measure) => limits.Of(measure.Code, DummyAt(measure.Position));

    private IEnumerable<RepeatedMeasure> CompareMeasures()
    {
        var lookups = runs.Select(run => run.Measures.DistinctBy(Key).ToDictionary(Key)).ToList();
        foreach (var measure in runs.SelectMany(run => run.Measures).DistinctBy(Key))
        {
            var values = lookups.ConvertAll(lookup => lookup.GetValueOrDefault(Key(measure))?.Value);
            if (values.Count(value => value is not null) >= 2 && (measure.Position is null || DummyAt(measure.Position) is not null))
            {
                yield return RepeatStatistics.Of(measure.Code, measure.Position, measure.Unit, values, limits.Of(measure.Code, DummyAt(measure.Position)));
            }
        }
    }

    private static (string, int?) Key(Measure measure) => (measure.Code, measure.Position);

    /// <summary>The dummy in a seat, where it was the same in every run.</summary>
    private DummyType? DummyAt(int? position)
    {
        var dummies = runs.Select(run => run.Occupants.FirstOrDefault(occupant => occupant.Position == position)?.Dummy).Distinct().ToList();
        return dummies.Count == 1 ? dummies[0] : null;
    }

    private IEnumerable<ComparedCurve> CompareCurves() =>
        from run in runs.Skip(1)
        from set in runs[0].Curves
        where set.Position is null || DummyAt(set.Position) is not null
        from curve in set.Curves
        where set.Key != VelocitySet || curve.Name == VehicleCurve
        let other = run.Curves.FirstOrDefault(s => s.Key == set.Key && s.Position == set.Position)?.Curves.FirstOrDefault(c => c.Name == curve.Name)
        select new ComparedCurve(set.Key, curve.Name, set.Position, set.Unit, runs[0].Test, run.Test, Compare(curve, other, run.Test));

    private static SignalAnswer Compare(Curve reference, Curve? compared, string test) =>
        compared is null ? new(null, $"{test} has no such curve") : SignalComparison.Compare(reference.History, compared.History, FromS, ToS);
}
