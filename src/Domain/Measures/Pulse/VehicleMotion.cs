using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Pulse;

/// <summary>
/// Velocity and travel of the vehicle from its acceleration, by the trapezoid rule from v0 at the first sample with t ≥ 0:
/// v = v0 + ∫ a dt, x = ∫ v dt (which is exact for a v linear between samples). Vehicle and barrier crush together in x.
/// </summary>
public sealed class VehicleMotion
{
    /// <param name="acceleration">g, forward positive, first sample at contact.</param>
    /// <param name="impactSpeedMs">v0, m/s.</param>
    public VehicleMotion(TimeHistory acceleration, double impactSpeedMs)
    {
        Acceleration = acceleration;
        ImpactSpeedMs = impactSpeedMs;
        var samples = acceleration.Values.Span;
        var metres = new double[samples.Length];
        for (var i = 0; i < metres.Length; i++)
        {
            metres[i] = samples[i] * WorkingUnits.StandardGravity;
        }

        VelocityMs = Integral.Cumulative(metres, acceleration.IntervalS, impactSpeedMs);
        TravelM = Integral.Cumulative(VelocityMs.Span, acceleration.IntervalS);
    }

    public TimeHistory Acceleration { get; }

    public double ImpactSpeedMs { get; }

    /// <summary>Velocity at each sample, m/s.</summary>
    public ReadOnlyMemory<double> VelocityMs { get; }

    /// <summary>Travel since contact at each sample, m.</summary>
    public ReadOnlyMemory<double> TravelM { get; }

    /// <summary>Index of the lowest velocity, the earliest on a tie.</summary>
    public int SlowestAt => Peak.LowestIndex(VelocityMs.Span);

    /// <summary>Index of the greatest travel, the earliest on a tie.</summary>
    public int FarthestAt => Peak.HighestIndex(TravelM.Span);
}
