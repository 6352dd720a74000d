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
    public static IReadOnlyList<Measure> Reduce(OccupantContext context)
    {
        var measures = All.SelectMany(measure => measure.Reduce(context)).ToDictionary(measure => measure.Code, StringComparer.Ordinal);
        Add(RegionRisk.Reduce(context.Occupant, measures).ToList());
        Add(LowerLegRisk.Reduce(context));
        Add([JointRisk.Reduce(context.Occupant, measures)]);
        return measures.Values.OrderBy(measure => MeasureCatalogue.OrderOf(measure.Code)).ToList();

        void Add(IEnumerable<Measure> risks)
        {
            foreach (var risk in risks)
            {
                measures.Add(risk.Code, risk);
            }
        }
    }
}
