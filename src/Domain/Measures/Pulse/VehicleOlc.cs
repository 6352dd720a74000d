using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Pulse;

/// <summary>The occupant load criterion: the even deceleration that an occupant of this vehicle could at best have had, given the room assumed.</summary>
/// <formula>The occupant goes on at v0 until 65 mm ahead of the vehicle (t1), then slows evenly at a so as to reach the vehicle's speed (t2) when another 235 mm are used up: v0·t1 − x(t1) = 0.065 m; v0·(t2 − t1) − a·(t2 − t1)²/2 − (x(t2) − x(t1)) = 0.235 m; v0 − a·(t2 − t1) = v(t2); the criterion is a/g0. v is linear between samples, x its exact integral.</formula>
/// <window>t1 to t2, within 0 to 300 ms.</window>
/// <edges>Absent where either distance is not used up in the window, or where vehicle acceleration or impact speed is absent. It needs the pulse only up to t2, so it stands on a channel that is unfit after that.</edges>
/// <sources>[olc] for 65 mm and 300 mm in all; 235 mm is the difference, from memory.</sources>
/// <confidence>C2; 235 mm M.</confidence>
/// <checks>Constant deceleration in closed form; the half-sine pulses of the check cases.</checks>
public sealed class VehicleOlc : IVehicleMeasure
{
    public const string Code = "vehicle.olc";

    /// <summary>Slack before the occupant is held, m.</summary>
    public const double FreeTravelM = 0.065;

    /// <summary>Travel while held, m.</summary>
    public const double HeldTravelM = 0.235;

    private const string Unit = "g";

    /// <inheritdoc/>
    public Measure Reduce(PulseContext context)
    {
        var pulse = context.Integration;
        if ((context.Motion ?? context.PartialMotion) is not { } motion)
        {
            return PulseReport.Absent(Code, Unit, PulseContext.IntegrationClass, pulse, context.NoMotion!);
        }

        if (Solve(motion) is not { } solved)
        {
            return PulseReport.Absent(
                Code, Unit, PulseContext.IntegrationClass, pulse,
                context.NoMotion ?? "the occupant of the criterion does not use up 65 mm and then 235 mm within the evaluation window");
        }

        return PulseReport.Present(
            Code, Unit, PulseContext.IntegrationClass, pulse, solved.DecelerationMs2 / WorkingUnits.StandardGravity,
            motion.Acceleration.StartS + solved.HeldFromS, motion.Acceleration.StartS + solved.HeldToS);
    }

    private sealed record Solution(double HeldFromS, double HeldToS, double DecelerationMs2);

    private static Solution? Solve(VehicleMotion motion)
    {
        var v = motion.VelocityMs.Span;
        var x = motion.TravelM.Span;
        var (v0, dt) = (motion.ImpactSpeedMs, motion.Acceleration.IntervalS);
        var i = 0;
        while (i + 1 < v.Length && (v0 * (i + 1) * dt) - x[i + 1] < FreeTravelM)
        {
            i++;
        }

        if (i + 1 >= v.Length)
        {
            return null;
        }

        // Within an interval the lead is s + (v0 − v)τ − kτ²/2, k the slope of v.
        var slope = (v[i + 1] - v[i]) / dt;
        var missing = FreeTravelM - ((v0 * i * dt) - x[i]);
        var gain = v0 - v[i];
        var tau = 2 * missing / (gain + Math.Sqrt(Math.Max(0, (gain * gain) - (2 * slope * missing))));
        var t1 = (i * dt) + tau;
        var x1 = x[i] + (v[i] * tau) + (slope * tau * tau / 2);
        return SolveHeld(v, x, v0, dt, i, t1, x1);
    }

    // With a eliminated, (v0 + v(t2))/2 · (t2 − t1) − (x(t2) − x(t1)) = 0.235, which is linear in t2 within an interval.
    private static Solution? SolveHeld(ReadOnlySpan<double> v, ReadOnlySpan<double> x, double v0, double dt, int first, double t1, double x1)
    {
        for (var j = first; j + 1 < v.Length; j++)
        {
            if (Held(v[j + 1], x[j + 1], ((j + 1) * dt) - t1) < HeldTravelM)
            {
                continue;
            }

            var slope = (v[j + 1] - v[j]) / dt;
            var since = (j * dt) - t1;
            var rate = (v0 - v[j] + (slope * since)) / 2;
            var t2 = (j * dt) + ((HeldTravelM - Held(v[j], x[j], since)) / rate);
            var speed = v[j] + (slope * (t2 - (j * dt)));
            return new(t1, t2, (v0 - speed) / (t2 - t1));
        }

        return null;

        double Held(double velocity, double travel, double since) => ((v0 + velocity) / 2 * since) - (travel - x1);
    }
}
