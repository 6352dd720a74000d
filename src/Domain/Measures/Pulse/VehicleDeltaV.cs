namespace Toepan.Domain.Measures.Pulse;

/// <summary>How much speed the vehicle lost, rebound included.</summary>
/// <formula>v0 − min v, km/h; v = v0 + ∫ a dt by the trapezoid rule, v0 the mean of the speed readings.</formula>
/// <window>From contact to the instant of least velocity, the earliest on a tie, within 0 to 300 ms.</window>
/// <edges>Absent where the vehicle acceleration or the impact speed is absent. A channel at its stop gives a lower bound, as does the part of a channel that is fit only up to a time.</edges>
/// <sources>Textbook kinematics; [part563] 563.5 defines the maximum over 300 ms; class from [j211-1].</sources>
/// <confidence>C1 for the span; M for the class.</confidence>
/// <checks>Half-sine pulses in closed form; scipy's cumulative_trapezoid.</checks>
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
