namespace Toepan.Domain.Measures.Pulse;

/// <summary>
/// <c>vehicle.deltav</c>, km/h: v0 − min v over the evaluation window, v = v0 + ∫ a dt by the trapezoid rule at class 180; rebound counts. From contact to the
/// instant of least velocity. A channel at its stop gives "at least"; one fit only up to a time gives "at least" from what came before.
/// Source: textbook kinematics, standards.md §10; class from memory of SAE J211-1.
/// </summary>
public sealed class VehicleDeltaV : IVehicleMeasure
{
    public const string Code = "vehicle.deltav";
    private const string Unit = "km/h";
    private const double KmhPerMs = 3.6;

    /// <inheritdoc/>
    public Measure Reduce(PulseContext context)
    {
        var pulse = context.Integration;
        if (context.Motion is not { } motion)
        {
            return PulseReport.Absent(
                Code, Unit, PulseContext.IntegrationClass, pulse, context.NoMotion!, context.PartialMotion is { } part ? DeltaV(part) : null);
        }

        var value = DeltaV(motion);
        var history = motion.Acceleration;
        var measure = PulseReport.Present(Code, Unit, PulseContext.IntegrationClass, pulse, value, history.StartS, history.TimeAt(motion.SlowestAt));
        return pulse.DecelerationClipped ? measure with { Bounds = new(measure.Value, null, PulseReport.ClippedReason) } : measure;
    }

    private static double DeltaV(VehicleMotion motion) => (motion.ImpactSpeedMs - motion.VelocityMs.Span[motion.SlowestAt]) * KmhPerMs;
}
