namespace Toepan.Domain.Measures.Injury;

/// <summary>The acceleration of a foot that was exceeded for 3 ms in all.</summary>
/// <formula>a3ms as for the head, of the resultant of the foot's axes present (at least X and Z), g; see ThreeMillisecond.</formula>
/// <window>The first and the last instant at the level, on the straight lines between samples.</window>
/// <edges>Without a Y axis in the package the resultant of X and Z is used and said. An axis that is present and unfit makes the measure absent; the axes left give a lower bound, as does a clipped axis.</edges>
/// <sources>Filter class [j211-1]; no regulatory limit exists.</sources>
/// <confidence>M-low: some laboratories use class 600.</confidence>
/// <checks>As for ThreeMillisecond.</checks>
public sealed class FootAcceleration : IOccupantMeasure
{
    private const int FilterClass = 1000;

    public IEnumerable<Measure> Reduce(OccupantContext context) => Side.Both.Select(side => Reduce(context, side));

    private static Measure Reduce(OccupantContext context, Side side)
    {
        var location = $"FOOT{side.Code}00";
        var threeAxes = Component.Exists(context, location, "ACY");
        var (group, trace) = Accelerations.Of(context, location, FilterClass, threeAxes ? "XYZ" : "XZ");
        return group.Reduce($"foot.{side.Word}.a3ms", trace, ThreeMillisecond.Of, threeAxes ? null : "of X and Z");
    }
}
