using Toepan.Domain.Packages;

namespace Toepan.Demo.Crash;

/// <summary>
/// Where the points stand before the crash, how far the front pushes them, and what a measuring arm set up anew beside the wreck reads of them.
/// Vehicle frame: x forward, y right, z down, mm.
/// </summary>
public sealed class StructureModel(Random random, double q, double speedRatio)
{
    private const double ArmNoiseMm = 0.25;
    private readonly double[] turn = [(random.NextDouble() - 0.5) * 0.08, (random.NextDouble() - 0.5) * 0.06, (random.NextDouble() - 0.5) * 0.10];
    private readonly double[] shift = [(random.NextDouble() - 0.5) * 900, (random.NextDouble() - 0.5) * 700, (random.NextDouble() - 0.5) * 200];

    private static readonly (string Name, double X, double Y, double Z)[] References =
    [
        ("sill-rear-left", -420, -760, 120), ("sill-rear-right", -425, 758, 118), ("floor-rear-left", -900, -420, 60),
        ("floor-rear-right", -905, 418, 62), ("b-pillar-left", -40, -795, -560), ("b-pillar-right", -42, 797, -558), ("tunnel-rear", -650, 5, -40),
    ];

    /// <summary>Every point, before and after, in their own frames. <paramref name="movedReference"/> was knocked between the two.</summary>
    public List<StructuralPoint> Points(string? movedReference)
    {
        var points = new List<StructuralPoint>();
        foreach (var (name, x, y, z) in References)
        {
            Add(points, name, PointRole.Reference, [x, y, z], name == movedReference ? [-14, 3, 9] : [0, 0, 0]);
        }

        foreach (var (name, position, push) in Measured())
        {
            Add(points, name, PointRole.Measured, position, [.. push.Select(p => p * speedRatio * speedRatio)]);
        }

        return points;
    }

    private IEnumerable<(string Name, double[] Position, double[] Push)> Measured()
    {
        var footwell = 28 + (55 * q);
        foreach (var (row, z, rowShare) in new[] { ("upper", -60.0, 1.0), ("middle", 60.0, 0.86), ("lower", 165.0, 0.66) })
        {
            foreach (var (column, y, columnShare) in new[] { ("outer", -610.0, 1.0), ("centre", -430.0, 0.88), ("inner", -250.0, 0.7) })
            {
                yield return ($"footwell-{row}-{column}", [1180 - (0.4 * z), y, z], [-footwell * rowShare * columnShare, 0.12 * footwell, -0.3 * footwell * rowShare]);
            }
        }

        yield return ("pedal-brake", [1080, -395, 20], [-0.8 * footwell, 4, -0.25 * footwell]);
        yield return ("knee-panel-outer", [900, -560, -150], [-(12 + (27 * q)), 3, -(4 + (9 * q))]);
        yield return ("knee-panel-inner", [905, -260, -155], [-(9 + (22 * q)), 2, -(3 + (7 * q))]);
        yield return ("wheel-hub", [560, -380, -420], [-(6 + (24 * q)), 2 + (3 * q), -(7 + (17 * q))]);
        foreach (var (level, z, share) in new[] { ("upper", -520.0, 1.0), ("lower", -80.0, 0.75) })
        {
            yield return ($"door-opening-front-{level}", [980, -790, z], [-share * (5 + (23 * q)), 1, -2 - (3 * q)]);
            yield return ($"door-opening-rear-{level}", [20, -800, z], [-0.8, 0.4, -0.3]);
        }

        yield return ("seat-front-outer", [330, -600, 190], [-1.5 - (3 * q), 0.5, -1 - q]);
        yield return ("seat-front-inner", [332, -230, 188], [-1.2 - (2 * q), 0.5, -1 - q]);
        yield return ("seat-rear-outer", [-60, -598, 200], [-0.8, 0.3, -0.4]);
        yield return ("seat-rear-inner", [-58, -232, 198], [-0.6, 0.3, -0.4]);
        yield return ("windscreen-base", [1240, 0, -640], [-(7 + (20 * q)), 2, -(3 + (6 * q))]);
        yield return ("exterior-front-left", [2350, -560, 60], [-(720 + (40 * q)), 60, -20]);
        yield return ("exterior-front-centre", [2400, 0, 55], [-(430 + (30 * q)), 110, -12]);
        yield return ("exterior-front-right", [2350, 560, 60], [-(90 + (12 * q)), 140, -6]);
    }

    private void Add(List<StructuralPoint> points, string name, PointRole role, double[] before, double[] push)
    {
        var pushed = role == PointRole.Measured ? push.Select(p => p * (0.97 + (0.06 * random.NextDouble()))).ToArray() : push;
        double[] after = [.. before.Zip(pushed, (b, p) => b + p)];
        points.Add(new StructuralPoint(name, role, Reading(before), Reading(Moved(after)), points.Count + 2));
    }

    private Coordinates Reading(double[] p) => new(Arm(p[0]), Arm(p[1]), Arm(p[2]));

    private double Arm(double value) => double.Round(value + (ArmNoiseMm * (random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5) * 1.6), 2);

    /// <summary>The wreck stands turned and shifted against where it stood before.</summary>
    private double[] Moved(double[] p)
    {
        var (sx, cx, sy, cy, sz, cz) = (Math.Sin(turn[0]), Math.Cos(turn[0]), Math.Sin(turn[1]), Math.Cos(turn[1]), Math.Sin(turn[2]), Math.Cos(turn[2]));
        var (y1, z1) = ((cx * p[1]) - (sx * p[2]), (sx * p[1]) + (cx * p[2]));
        var (x2, z2) = ((cy * p[0]) + (sy * z1), (-sy * p[0]) + (cy * z1));
        return [(cz * x2) - (sz * y1) + shift[0], (sz * x2) + (cz * y1) + shift[1], z2 + shift[2]];
    }
}
