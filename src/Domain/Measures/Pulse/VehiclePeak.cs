namespace Toepan.Domain.Measures.Pulse;

/// <summary>The largest deceleration of the vehicle.</summary>
/// <formula>max(−ax, 0), g.</formula>
/// <window>The instant of the peak, the earliest on a tie, within 0 to 300 ms.</window>
/// <edges>Absent where the vehicle acceleration is absent. A channel at its stop gives a lower bound, as does the part of a channel that is fit only up to a time.</edges>
/// <sources>Class from [j211-1].</sources>
/// <confidence>M for the class; the maximum itself is common practice.</confidence>
/// <checks>A slow pulse, which the class leaves as it is.</checks>
public sealed class VehiclePeak : IVehicleMeasure
{
    public const string Code = "vehicle.peak";
    private const string Unit = "g";

    /// <inheritdoc/>
    public Measure Reduce(PulseContext context)
    {
        var pulse = context.Shape;
        if (pulse.History is not { } history)
        {
            return PulseReport.Absent(
                Code, Unit, PulseContext.ShapeClass, pulse, pulse.Absent!, pulse.Partial is { } part ? PeakOf(part.Values.Span) : null);
        }

        var at = history.TimeAt(Peak.LowestIndex(history.Values.Span));
        var measure = PulseReport.Present(Code, Unit, PulseContext.ShapeClass, pulse, PeakOf(history.Values.Span), at, at);
        return pulse.DecelerationClipped ? measure with { Bounds = new(measure.Value, null, PulseReport.ClippedReason) } : measure;
    }

    private static double PeakOf(ReadOnlySpan<double> accelerations) => Math.Max(-accelerations[Peak.LowestIndex(accelerations)], 0);
}
