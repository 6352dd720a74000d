namespace Toepan.Demo.Crash;

/// <summary>Longitudinal motion of the passenger compartment, one value a step.</summary>
/// <param name="StepS">Step, s; index 0 is contact.</param>
/// <param name="AccelerationMs2">Acceleration, m/s², negative while it slows down.</param>
/// <param name="VelocityMs">Velocity, m/s.</param>
/// <param name="TravelM">Travel since contact, m.</param>
public sealed record VehicleMotion(double StepS, double[] AccelerationMs2, double[] VelocityMs, double[] TravelM);

/// <summary>
/// One mass against a deformable barrier and its own front: the force rises with travel along a table, has a bump where the drive unit
/// meets the bulkhead, and unloads stiffly. Invented figures, chosen to look like the trade's usual pulses; common practice, no source.
/// </summary>
public static class VehiclePulse
{
    private const double UnloadingStiffness = 4.0e7;
    private static readonly double[] TravelTableM = [0, 0.10, 0.30, 0.60, 0.90, 1.20, 1.60];
    private static readonly double[] ForceTableKn = [0, 55, 130, 215, 345, 500, 820];

    /// <summary>Integrates the motion from contact.</summary>
    /// <param name="massKg">Test mass, kg.</param>
    /// <param name="speedMs">Impact speed, m/s.</param>
    /// <param name="stiffness">Factor on the force table: 1 = ordinary for 1 800 kg.</param>
    /// <param name="stepS">Step, s.</param>
    /// <param name="count">Number of steps.</param>
    public static VehicleMotion Integrate(double massKg, double speedMs, double stiffness, double stepS, int count)
    {
        var motion = new VehicleMotion(stepS, new double[count], new double[count], new double[count]);
        var (velocity, travel, furthest) = (speedMs, 0.0, 0.0);
        for (var i = 0; i < count; i++)
        {
            furthest = Math.Max(furthest, travel);
            var acceleration = -ForceN(travel, furthest, velocity, stiffness) / massKg;
            (motion.AccelerationMs2[i], motion.VelocityMs[i], motion.TravelM[i]) = (acceleration, velocity, travel);
            velocity += acceleration * stepS;
            travel += velocity * stepS;
        }

        return motion;
    }

    private static double ForceN(double travelM, double furthestM, double velocityMs, double stiffness)
    {
        var loading = stiffness * 1000 * (TableKn(Math.Max(furthestM, 0)) + Bump(furthestM, velocityMs));
        return Math.Max(0, loading - (UnloadingStiffness * (furthestM - travelM)));
    }

    private static double Bump(double travelM, double velocityMs) =>
        velocityMs <= 0 ? 0 : 90 * Math.Exp(-Math.Pow((travelM - 0.52) / 0.06, 2));

    private static double TableKn(double travelM)
    {
        for (var i = 1; i < TravelTableM.Length; i++)
        {
            if (travelM <= TravelTableM[i])
            {
                var share = (travelM - TravelTableM[i - 1]) / (TravelTableM[i] - TravelTableM[i - 1]);
                return ForceTableKn[i - 1] + (share * (ForceTableKn[i] - ForceTableKn[i - 1]));
            }
        }

        return ForceTableKn[^1];
    }
}
