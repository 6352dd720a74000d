using Toepan.Demo.Scenario;

namespace Toepan.Demo.Crash;

/// <summary>What the crash did to one dummy, one value a step, in SI units and SAE J211 signs (forward positive).</summary>
/// <param name="StepS">Step, s; index 0 is contact.</param>
/// <param name="Head">Head acceleration along x, m/s².</param>
/// <param name="Chest">Chest acceleration along x, m/s².</param>
/// <param name="Pelvis">Pelvis acceleration along x, m/s².</param>
/// <param name="NeckPull">What the neck gives the head along x, m/s² (force over head mass).</param>
/// <param name="Belt">Belt load over occupant mass, m/s².</param>
/// <param name="Knee">Knee load over occupant mass, m/s².</param>
/// <param name="HeadBag">What the airbag takes from the head along x, m/s² (force over head mass).</param>
public sealed record OccupantMotion(
    double StepS, double[] Head, double[] Chest, double[] Pelvis, double[] NeckPull, double[] Belt, double[] Knee, double[] HeadBag)
{
    private const double FirmContactMs2 = 110;

    /// <summary>When the head is firmly on the airbag, s; null where it never is.</summary>
    public double? HeadContactS => Array.FindIndex(HeadBag, load => load > FirmContactMs2) is >= 0 and var at ? at * StepS : null;
}

/// <summary>
/// Three masses a dummy: chest on belt and airbag, head on neck and airbag, pelvis on lap belt and knee panel, each bottoming out when
/// it has used its space. Mass-normalised, so the small dummy differs by its loads only. Invented figures, no source.
/// </summary>
public static class OccupantModel
{
    private const double G = 9.80665;

    /// <summary>Integrates the motion of one dummy in the given vehicle motion.</summary>
    public static OccupantMotion Integrate(VehicleMotion vehicle, BuildQuality build)
    {
        var steps = vehicle.TravelM.Length;
        var motion = new OccupantMotion(
            vehicle.StepS, new double[steps], new double[steps], new double[steps], new double[steps], new double[steps], new double[steps], new double[steps]);
        var (head, chest, pelvis) = (new Mass(vehicle.VelocityMs[0]), new Mass(vehicle.VelocityMs[0]), new Mass(vehicle.VelocityMs[0]));
        for (var i = 0; i < steps; i++)
        {
            var (x, v) = (vehicle.TravelM[i], vehicle.VelocityMs[i]);
            var belt = BeltLoad(chest.X - x, chest.V - v, build.Chest);
            var bag = ChestBagLoad(chest.X - x, chest.V - v, build.Chest);
            var neck = NeckLoad(head.X - chest.X, head.V - chest.V);
            var (lap, knee) = (LapLoad(pelvis.X - x, pelvis.V - v), KneeLoad(pelvis.X - x, pelvis.V - v, build.Thigh));
            motion.Belt[i] = belt;
            motion.Knee[i] = knee;
            motion.NeckPull[i] = -neck;
            motion.HeadBag[i] = HeadBagLoad(head.X - x, head.V - v, build.Head);
            motion.Head[i] = head.Step(-motion.HeadBag[i] - neck, vehicle.StepS);
            motion.Chest[i] = chest.Step(-belt - bag + (0.1 * neck), vehicle.StepS);
            motion.Pelvis[i] = pelvis.Step(-lap - knee, vehicle.StepS);
        }

        return motion;
    }

    private static double BeltLoad(double d, double rate, double q) =>
        Math.Min((2300 - (100 * q)) * Math.Max(0, d - 0.02 - (0.012 * q)), (21 + (2.5 * q)) * G) * Load(rate, -0.2, 0.08);

    private static double ChestBagLoad(double d, double rate, double q) =>
        ((900 + (500 * q)) * Math.Max(0, d - 0.11) * Load(rate, 0, 0.08)) + (20_000 * Math.Max(0, d - 0.36 + (0.035 * q)) * Load(rate, 0, 0.05));

    private static double HeadBagLoad(double d, double rate, double q) =>
        ((1450 + (150 * q)) * Math.Max(0, d - 0.14) * Load(rate, 0, 0.1))
        + ((9000 + (9000 * q)) * Math.Max(0, d - 0.37 + (0.042 * q)) * Load(rate, 0, 0.08));

    private static double NeckLoad(double stretch, double rate) => Math.Clamp((2600 * stretch) + (12 * rate), -38 * G, 38 * G);

    private static double LapLoad(double d, double rate) => Math.Min(2600 * Math.Max(0, d - 0.018), 26 * G) * Load(rate, -0.2, 0.08);

    private static double KneeLoad(double d, double rate, double q) =>
        (2200 + (300 * q)) * Math.Max(0, d - 0.105 + (0.012 * q)) * Load(rate, 0, 0.1);

    /// <summary>Full load while it is pressed in, a share of it while it lets go; smooth over about 0.3 m/s.</summary>
    private static double Load(double rate, double turnsAt, double returned) =>
        returned + ((1 - returned) / (1 + Math.Exp(-(rate - turnsAt) / 0.15)));

    private sealed class Mass(double speed)
    {
        public double X { get; private set; }
        public double V { get; private set; } = speed;

        public double Step(double acceleration, double stepS)
        {
            V += acceleration * stepS;
            X += V * stepS;
            return acceleration;
        }
    }
}
