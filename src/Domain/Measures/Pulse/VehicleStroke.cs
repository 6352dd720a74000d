namespace Toepan.Domain.Measures.Pulse;

/// <summary>
/// <c>vehicle.stroke</c>, mm: max of ∫ v dt over the evaluation window, both integrals by the trapezoid rule at class 180. Vehicle and barrier crush
/// together in it: it is not vehicle crush. From contact to the instant of the maximum. A channel at its stop gives "at most" (the true velocity was lower);
/// one fit only up to a time gives "at least". Source: textbook kinematics, standards.md §10.
/// </summary>
public sealed class VehicleStroke : IVehicleMeasure
{
    public const string Code = "vehicle.stroke";
    private const string Unit = "mm";
    private const double MmPerM = 1000;

    /// <inheritdoc/>
    public Measure Reduce(PulseContext context)
    {
        var pulse = context.Integration;
        if (context.Motion is not { } motion)
        {
            return PulseReport.Absent(
                Code, Unit, PulseContext.IntegrationClass, pulse, context.NoMotion!, context.PartialMotion is { } part ? Stroke(part) : null);
        }

        var history = motion.Acceleration;
        var measure = PulseReport.Present(
            Code, Unit, PulseContext.IntegrationClass, pulse, Stroke(motion), history.StartS, history.TimeAt(motion.FarthestAt));
        return pulse.DecelerationClipped ? measure with { Bounds = new(null, measure.Value, PulseReport.ClippedReason) } : measure;
    }

    private static double Stroke(VehicleMotion motion) => motion.TravelM.Span[motion.FarthestAt] * MmPerM;
}
