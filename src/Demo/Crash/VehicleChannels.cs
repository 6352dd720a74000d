namespace Toepan.Demo.Crash;

/// <summary>The channels on the vehicle: its centre of mass and both B-pillars, the struck side slowing a little earlier.</summary>
public static class VehicleChannels
{
    private const double G = 9.80665;

    public static IEnumerable<TrueSignal> All(VehicleMotion motion)
    {
        double[] Scaled(double factor, int delay) =>
            [.. Enumerable.Range(0, motion.AccelerationMs2.Length).Select(i => factor * motion.AccelerationMs2[Math.Max(0, i - delay)] / G)];
        var delaySteps = (int)Math.Round(0.0015 / motion.StepS);
        yield return new("10VEHC000000ACXP", "g", 200, Scaled(1, 0));
        yield return new("10VEHC000000ACYP", "g", 200, Scaled(0.07, delaySteps));
        yield return new("10VEHC000000ACZP", "g", 200, Scaled(-0.05, delaySteps));
        yield return new("10BPILLE0000ACXP", "g", 200, Scaled(1.01, 0));
        yield return new("10BPILRI0000ACXP", "g", 200, Scaled(0.99, delaySteps));
    }
}
