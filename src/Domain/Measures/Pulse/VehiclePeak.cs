namespace Toepan.Domain.Measures.Pulse;

/// <summary>
/// <c>vehicle.peak</c>, g: max(−ax, 0) of the vehicle's acceleration at class 60 over the evaluation window, at its instant. A channel at its stop gives
/// "at least"; one fit only up to a time gives "at least" from what came before. Source: methods edition 1; class from memory of SAE J211-1, standards.md §1.3.
/// </summary>
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
