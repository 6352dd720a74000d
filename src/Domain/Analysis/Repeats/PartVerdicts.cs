using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Repeats;

/// <summary>What a vehicle's runs are judged on.</summary>
public enum RepeatPart
{
    Structure,
    Pulse,
    Dummy,
}

/// <summary>Whether a part came out the same.</summary>
public enum Repeating
{
    /// <summary>Every item repeats.</summary>
    Repeats,

    /// <summary>At least half of them do.</summary>
    InPart,

    /// <summary>Fewer do.</summary>
    DoesNot,

    /// <summary>There is nothing to judge by.</summary>
    NotMeasured,
}

/// <summary>One part judged.</summary>
/// <param name="Part">Structure, pulse or dummy.</param>
/// <param name="Verdict">Verdict.</param>
/// <param name="Items">Items looked at: measures and compared curves.</param>
/// <param name="Alike">Items that repeat.</param>
/// <param name="Apart">Codes and curve names of the others, the furthest apart first.</param>
/// <param name="Rule">The rule in words.</param>
public sealed record PartVerdict(RepeatPart Part, Repeating Verdict, int Items, int Alike, IReadOnlyList<string> Apart, string Rule);

/// <summary>
/// Which parts repeat. A displacement repeats where s is at most the scheme's displacement scatter; another measure where its CV is at most 10 %
/// (the last tier of CVs passed in evaluations of dummies, from memory) or s is at most 5 % of its limit; a curve where its overall
/// score is above 0.80 (rank 2). All = repeats, half or more = in part. The rule is this programme's own.
/// </summary>
internal sealed class PartVerdicts(Scheme scheme, RepeatComparison comparison, Func<int?, DummyType?> dummyAt)
{
    private const double LargestCv = 0.10;
    private const double SmallShareOfLimit = 0.05;
    private const double LeastScore = 0.80;
    private static readonly string[] PulseMeasures = ["vehicle.deltav", "vehicle.peak", "vehicle.stroke", "vehicle.olc"];

    private double LargestSdMm => scheme.Repeatability.DisplacementStandardDeviationMm;

    public IReadOnlyList<PartVerdict> All()
    {
        var structural = scheme.Structure.Measures.Select(rated => rated.Measure).ToHashSet(StringComparer.Ordinal);
        var measures = comparison.Measures.Where(measure => measure.Count >= 2).ToLookup(Part);
        return
        [
            Judge(
                RepeatPart.Structure, measures[RepeatPart.Structure].Where(measure => structural.Contains(measure.Code)).Select(Displacement),
                FormattableString.Invariant($"standard deviation at most {LargestSdMm} mm")),
            Judge(RepeatPart.Pulse, measures[RepeatPart.Pulse].Select(Load).Concat(Curves(null)), LoadRule),
            Judge(RepeatPart.Dummy, measures[RepeatPart.Dummy].Where(Rated).Select(Load).Concat(Curves(true)), LoadRule),
        ];
    }

    private const string LoadRule = "CV at most 10 % or standard deviation at most 5 % of the limit; curves score above 0.80";

    private static RepeatPart? Part(RepeatedMeasure measure) =>
        measure.Position is not null ? RepeatPart.Dummy
        : PulseMeasures.Contains(measure.Code) ? RepeatPart.Pulse
        : measure.Code.StartsWith("structure.", StringComparison.Ordinal) ? RepeatPart.Structure
        : null;

    private bool Rated(RepeatedMeasure measure) => dummyAt(measure.Position) is { } dummy && scheme.RegionsOf(dummy).Any(rule =>
        rule.Limits.Any(limit => limit.Measure == measure.Code) || rule.Measures.Any(rated => rated.Measure == measure.Code)
        || (rule.Risk?.Curves.Any(curve => curve.Load == measure.Code) ?? false));

    /// <summary>How far an item is from repeating: at most 1 repeats.</summary>
    private (string Name, double Distance) Displacement(RepeatedMeasure measure) => (measure.Code, measure.Sd!.Value / LargestSdMm);

    private (string Name, double Distance) Load(RepeatedMeasure measure)
    {
        var byCv = measure.Cv / LargestCv;
        var byLimit = measure.Sd / (SmallShareOfLimit * comparison.LimitOf(measure));
        return (measure.Code, Math.Min(byCv ?? (measure.NoCv is null ? double.PositiveInfinity : 0), byLimit ?? double.PositiveInfinity));
    }

    // 0 … 1 for scores above 0.80, more than 1 at 0.80 and below.
    private IEnumerable<(string Name, double Distance)> Curves(bool? ofDummy) =>
        from curve in comparison.Curves
        where curve.Position is not null == (ofDummy ?? false)
        where curve.Answer.Scores is not null
        let score = curve.Answer.Scores!.Overall
        select ($"{curve.Key} {curve.Name}", score > LeastScore ? (1 - score) / (1 - LeastScore) : 1 + LeastScore - score + 1e-9);

    private static PartVerdict Judge(RepeatPart part, IEnumerable<(string Name, double Distance)> items, string rule)
    {
        var all = items.ToList();
        var alike = all.Count(item => item.Distance <= 1);
        var verdict = all.Count == 0 ? Repeating.NotMeasured : alike == all.Count ? Repeating.Repeats : 2 * alike >= all.Count ? Repeating.InPart : Repeating.DoesNot;
        return new(part, verdict, all.Count, alike, [.. all.Where(item => item.Distance > 1).OrderByDescending(item => item.Distance).Select(item => item.Name).Distinct()], rule);
    }
}
