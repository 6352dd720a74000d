namespace Toepan.Domain.Measures.Pulse;

/// <summary>How far the vehicle went on after contact. Vehicle and barrier crush together in it: it is not vehicle crush.</summary>
/// <formula>max ∫ v dt, mm; v = v0 + ∫ a dt; both by the trapezoid rule.</formula>
/// <window>From contact to the instant of the maximum, the earliest on a tie, within 0 to 300 ms.</window>
/// <edges>Absent where the vehicle acceleration or the impact speed is absent. A channel at its stop gives an upper bound (the true velocity was lower); the part of a channel that is fit only up to a time a lower one.</edges>
/// <sources>Textbook kinematics; class from [j211-1].</sources>
/// <confidence>M.</confidence>
/// <checks>Constant deceleration and half-sine pulses in closed form; scipy's cumulative_trapezoid.</checks>
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
