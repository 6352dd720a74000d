namespace Toepan.Domain.Programme;

/// <summary>
/// Holds what was recorded of a run against a procedure edition, item by item, in decimal arithmetic. Bounds are inclusive, with
/// 1e-9 of slack for readings that were divided or averaged. Methods edition 1, "Conduct".
/// </summary>
public static class ConductJudge
{
    private const decimal Slack = 1e-9m;

    /// <summary>
    /// One verdict for each item of the procedure, in its order: speed on the mean of all readings, their agreement on the
    /// largest difference (two readings at least), temperature on every reading (the one furthest out is shown), test mass
    /// against the declared mass where one is declared, the rest on the reading itself.
    /// </summary>
    public static ConductJudgement Judge(ProcedureEdition procedure, ConductReadings readings) =>
        new([.. procedure.Conduct.Select(item => Judge(item, readings))]);

    /// <summary>Mean of all speed readings, km/h, or null where none was recorded.</summary>
    public static decimal? MeanSpeedKmh(ConductReadings readings) =>
        readings.ImpactSpeedKmh.Count == 0 ? null : readings.ImpactSpeedKmh.Sum() / readings.ImpactSpeedKmh.Count;

    /// <summary>(v / v_nominal)²: impact energy over nominal energy, whatever the mass; null where no speed was recorded.</summary>
    public static decimal? EnergyRatio(ProcedureEdition procedure, ConductReadings readings) =>
        MeanSpeedKmh(readings) / procedure.NominalSpeedKmh is { } ratio ? ratio * ratio : null;

    private static ConductVerdict Judge(ConductItem item, ConductReadings readings)
    {
        var (lower, upper) = Bounds(item, readings);
        var judged = Readings(item.Item, readings)
            .Select(reading => (Reading: reading, Margin: Margin(reading, lower, upper)))
            .OrderBy(candidate => candidate.Margin ?? decimal.MaxValue)
            .ToList();
        if (judged.Count == 0 || (lower is null && upper is null))
        {
            decimal? unjudged = judged.Count == 0 ? null : judged[0].Reading;
            return new(item.Item, unjudged, item.Unit, lower, upper, null, Verdict.NotRecorded, item.Required, item.Source);
        }

        var (worst, margin) = judged[0];
        var verdict = margin >= -Slack ? Verdict.Within : Verdict.Outside;
        return new(item.Item, worst, item.Unit, lower, upper, margin, verdict, item.Required, item.Source);
    }

    private static IEnumerable<decimal> Readings(string item, ConductReadings readings) => item switch
    {
        ConductItems.ImpactSpeed => Recorded(MeanSpeedKmh(readings)),
        ConductItems.SpeedAgreement => readings.ImpactSpeedKmh.Count < 2 ? [] : [readings.ImpactSpeedKmh.Max() - readings.ImpactSpeedKmh.Min()],
        ConductItems.Overlap => Recorded(readings.OverlapPercent),
        ConductItems.DummyTemperature => readings.DummyTemperatureC,
        ConductItems.TestMass => Recorded(readings.TestMassKg),
        ConductItems.ImpactAngle => Recorded(readings.ImpactAngleDeg),
        ConductItems.VerticalAlignment => Recorded(readings.VerticalAlignmentMm),
        _ => [],
    };

    private static decimal[] Recorded(decimal? reading) => reading is { } value ? [value] : [];

    private static (decimal? Lower, decimal? Upper) Bounds(ConductItem item, ConductReadings readings)
    {
        if (item.PercentOfDeclared is not { } percent)
        {
            return (item.Lower, item.Upper);
        }

        var slack = readings.DeclaredTestMassKg * percent / 100;
        return (readings.DeclaredTestMassKg - slack, readings.DeclaredTestMassKg + slack);
    }

    private static decimal? Margin(decimal reading, decimal? lower, decimal? upper) => (reading - lower, upper - reading) switch
    {
        ({ } above, { } below) => Math.Min(above, below),
        var (above, below) => above ?? below,
    };
}
