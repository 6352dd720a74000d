using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Injury;

/// <summary>Every measure of one occupant: the loads first, then the risks made of them. A new measure is a file and a line here.</summary>
public static class OccupantMeasures
{
    public static IReadOnlyList<IOccupantMeasure> All { get; } =
    [
        new HeadInjuryCriterion(),
        new ThreeMillisecond(),
        new HeadPeak(),
        new NeckForces(),
        new NeckMoments(),
        new NeckNij(),
        new ChestDeflection(),
        new ChestViscous(),
        new FemurCompression(),
        new KneeSlide(),
        new TibiaIndex(),
        new TibiaCompression(),
        new FootAcceleration(),
    ];

    /// <summary>The measures and risks of one occupant: always the same codes, in the catalogue's order.</summary>
    public static IReadOnlyList<Measure> Reduce(OccupantContext context) =>
        WithRisks(context.Occupant, All.SelectMany(measure => measure.Reduce(context)).Concat(LowerLegRisk.Reduce(context)));

    /// <summary>Adds the risks that follow from other measures; <paramref name="reduced"/> holds every load and the lower-leg risks.</summary>
    internal static IReadOnlyList<Measure> WithRisks(Occupant occupant, IEnumerable<Measure> reduced)
    {
        var measures = reduced.ToDictionary(measure => measure.Code, StringComparer.Ordinal);
        foreach (var risk in RegionRisk.Reduce(occupant, measures).ToList())
        {
            measures.Add(risk.Code, risk);
        }

        var joint = JointRisk.Reduce(occupant, measures);
        measures.Add(joint.Code, joint);
        return measures.Values.OrderBy(measure => MeasureCatalogue.OrderOf(measure.Code)).ToList();
    }
}
