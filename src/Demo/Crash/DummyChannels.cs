using Toepan.Demo.Scenario;
using Toepan.Domain.Programme;

namespace Toepan.Demo.Crash;

/// <summary>A true signal before the transducer: code (16 characters), working unit, amplitude class, value as a function of the step.</summary>
public sealed record TrueSignal(string Code, string Unit, double AmplitudeClass, double[] Values);

/// <summary>The channels of one dummy, from its motion and the vehicle's build. Codes by ISO/TS 13499, signs by SAE J211.</summary>
public sealed class DummyChannels(Occupant occupant, OccupantMotion motion, BuildQuality build)
{
    private const double G = 9.80665;
    private readonly bool small = occupant.Dummy == DummyType.HF;
    private double HeadMassKg => small ? 3.73 : 4.54;

    /// <summary>Every channel of this dummy.</summary>
    public IEnumerable<TrueSignal> All() => [.. Head(), .. Neck(), .. Trunk(), .. Thighs(), .. LowerLegs(false), .. LowerLegs(true), .. Belts()];

    private IEnumerable<TrueSignal> Head()
    {
        var tension = NeckTension();
        yield return Signal("HEAD0000", "ACX", "g", 500, i => motion.Head[i] / G);
        yield return Signal("HEAD0000", "ACY", "g", 500, i => 0.06 * motion.Head[i] / G);
        yield return Signal("HEAD0000", "ACZ", "g", 500, i => (0.7 * tension[i] * 1000 / HeadMassKg / G) + (0.1 * motion.Chest[i] / G));
    }

    private IEnumerable<TrueSignal> Neck()
    {
        var tension = NeckTension();
        var pull = Shapes.Normalised(motion.NeckPull);
        var stop = Shapes.Normalised(Shapes.Lagged(motion.Head, motion.StepS, 0.006));
        var (flexion, extension) = (Scale(26 + (14 * build.Neck)), Scale(6 + (16 * build.Neck)));
        double ForceX(int i) => HeadMassKg * motion.NeckPull[i] / 1000;
        yield return Signal("NECKUP00", "FOX", "kN", 9, ForceX);
        yield return Signal("NECKUP00", "FOY", "kN", 9, i => 0.05 * ForceX(i));
        yield return Signal("NECKUP00", "FOZ", "kN", 14, i => tension[i]);
        yield return Signal("NECKUP00", "MOY", "N·m", 280, i => (flexion * Math.Max(0, -pull[i]) * (T(i) < 0.075 ? 1 : 0.3)) + (extension * Math.Min(0, stop[i])));
    }

    private double[] NeckTension()
    {
        var shape = Shapes.Normalised(Shapes.Lagged(motion.Head, motion.StepS, 0.004));
        var peak = Scale(0.8 + (0.6 * build.Neck));
        return [.. shape.Select((value, i) => (peak * Math.Max(0, -value)) - Shapes.HalfSine(T(i), 0.115, 0.05, 0.25 * peak))];
    }

    private IEnumerable<TrueSignal> Trunk()
    {
        var squeeze = Shapes.Normalised(Shapes.Lagged([.. motion.Chest.Select(a => Math.Min(a, 0))], motion.StepS, 0.010));
        var deflection = (small ? 17 : 20) + ((small ? 7.4 : 9.5) * build.Chest);
        yield return Signal("CHST0000", "ACX", "g", 400, i => motion.Chest[i] / G);
        yield return Signal("CHST0000", "ACY", "g", 400, i => 0.05 * motion.Chest[i] / G);
        yield return Signal("CHST0000", "ACZ", "g", 400, i => 0.18 * motion.Chest[i] / G);
        yield return Signal("CHST0003", "DSX", "mm", 100, i => deflection * Math.Min(0, squeeze[i]));
        yield return Signal("PELV0000", "ACX", "g", 400, i => motion.Pelvis[i] / G);
        yield return Signal("PELV0000", "ACY", "g", 400, i => 0.05 * motion.Pelvis[i] / G);
        yield return Signal("PELV0000", "ACZ", "g", 400, i => 0.15 * motion.Pelvis[i] / G);
    }

    private IEnumerable<TrueSignal> Thighs()
    {
        var knee = Shapes.Normalised(motion.Knee);
        foreach (var (side, share) in new[] { ("LE", 1.0), ("RI", 0.82) })
        {
            var force = share * Scale(2.0 + (2.3 * build.Thigh));
            yield return Signal($"FEMR{side}00", "FOZ", "kN", 20, i => -force * knee[i]);
            yield return Signal($"KNSL{side}00", "DSX", "mm", 30, i => -share * (1.5 + (2.4 * build.Thigh)) * knee[i]);
        }
    }

    private IEnumerable<TrueSignal> LowerLegs(bool right)
    {
        var (side, share) = right ? ("RI", 0.88) : ("LE", 1.0);
        var force = share * (small ? 0.62 : 1) * (1.2 + (1.3 * build.LowerLeg));
        var moment = share * (small ? 0.55 : 1) * (35 + (33 * build.LowerLeg));
        foreach (var (cell, load, bend) in new[] { ("UP", 0.78, 0.9), ("LO", 1.0, 1.0) })
        {
            yield return Signal($"TIBI{side}{cell}", "FOZ", "kN", 20, i => -force * load * Push(i, 0.046, 0.050));
            yield return Signal($"TIBI{side}{cell}", "MOX", "N·m", 400, i => moment * bend * 0.45 * Push(i, 0.050, 0.042));
            yield return Signal($"TIBI{side}{cell}", "MOY", "N·m", 400, i => moment * bend * 0.9 * ((Push(i, 0.048, 0.046) * 0.8) - (Push(i, 0.086, 0.05) * 0.7)));
        }

        var kick = share * (35 + (25 * build.LowerLeg));
        yield return Signal($"FOOT{side}00", "ACX", "g", 500, i => -kick * Push(i, 0.044, 0.022));
        yield return Signal($"FOOT{side}00", "ACZ", "g", 500, i => -kick * 0.6 * Push(i, 0.047, 0.020));
    }

    private IEnumerable<TrueSignal> Belts()
    {
        yield return Signal("SEBE0003", "FO0", "kN", 20, i => motion.Belt[i] * (small ? 14 : 21) / 1000);
        yield return Signal("SEBE0006", "FO0", "kN", 20, i => motion.Belt[i] * (small ? 12 : 19) / 1000);
    }

    private static double Push(double t, double startS, double lengthS) => Shapes.HalfSine(t, startS, lengthS, 1);

    private double Push(int i, double startS, double lengthS) => Push(T(i), startS, lengthS);

    private double T(int i) => i * motion.StepS;

    private double Scale(double value) => small ? 0.62 * value : value;

    private TrueSignal Signal(string location, string component, string unit, double amplitudeClass, Func<int, double> value) =>
        new($"1{occupant.Position}{location}{occupant.Dummy}{component}P", unit, amplitudeClass, [.. Enumerable.Range(0, motion.Head.Length).Select(value)]);
}
