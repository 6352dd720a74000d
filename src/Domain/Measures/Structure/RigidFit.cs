using Toepan.Domain.Packages;

namespace Toepan.Domain.Measures.Structure;

/// <summary>
/// Least-squares rigid motion (rotation and shift, no scale, no reflection) that takes points of one frame onto the same points of
/// another. The rotation is the unit quaternion that belongs to the largest eigenvalue of the 4 × 4 matrix of cross moments; it is
/// the proper rotation that the singular value decomposition of Kabsch and Umeyama gives. Sources: [kabsch1976], [umeyama1991]; the quaternion
/// form from memory. Golden test: rigid fits of scipy and check case §16-11.
/// </summary>
public sealed class RigidFit
{
    /// <summary>Points needed before a fit is defined.</summary>
    public const int MinimumPoints = 3;

    /// <summary>Second over first singular value of the centred points below which they count as lying on one line.</summary>
    public const double CollinearRatio = 0.01;

    private readonly double[,] scatterInverse;
    private readonly Coordinates centre;

    private RigidFit(RigidMotion motion, IReadOnlyList<double> residuals, Coordinates centre, double[,] scatterInverse)
    {
        Motion = motion;
        Residuals = residuals;
        this.centre = centre;
        this.scatterInverse = scatterInverse;
        var squares = 0.0;
        foreach (var residual in residuals)
        {
            squares += residual * residual;
        }

        Rms = Math.Sqrt(squares / residuals.Count);
        StandardDeviation = Math.Sqrt(squares / ((3 * residuals.Count) - 6));
    }

    public RigidMotion Motion { get; }

    /// <summary>Length of what is left of each point, in the order given.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>√(mean |r|²).</summary>
    public double Rms { get; }

    /// <summary>s = √(Σ|r|² / (3n − 6)): scatter of one coordinate, six degrees of freedom being spent on the motion.</summary>
    public double StandardDeviation { get; }

    /// <summary>Fits <paramref name="from"/> onto <paramref name="onto"/>.</summary>
    /// <exception cref="ArgumentException">Fewer than three points, or the lists differ in length, or either lies on a line.</exception>
    public static RigidFit Of(IReadOnlyList<Coordinates> from, IReadOnlyList<Coordinates> onto)
    {
        if (from.Count != onto.Count || from.Count < MinimumPoints || AreCollinear(from) || AreCollinear(onto))
        {
            throw new ArgumentException("A rigid fit needs at least three pairs of points that do not lie on a line.", nameof(from));
        }

        var (fromCentre, ontoCentre) = (Vector3.Mean(from), Vector3.Mean(onto));
        var turn = Rotation([.. from.Select(p => p.Minus(fromCentre))], [.. onto.Select(p => p.Minus(ontoCentre))]);
        var motion = turn with { Shift = ontoCentre.Minus(turn.Turn(fromCentre)) };
        Coordinates[] arms = [.. from.Select(p => turn.Turn(p.Minus(fromCentre)))];
        double[] residuals = [.. arms.Select((arm, i) => arm.Plus(ontoCentre).Minus(onto[i]).Length())];
        return new RigidFit(motion, residuals, ontoCentre, Inverse(Inertia(arms)));
    }

    /// <summary>True where the second singular value of the centred points is below 1 % of the first (one point repeated included).</summary>
    public static bool AreCollinear(IReadOnlyList<Coordinates> points)
    {
        var mean = Vector3.Mean(points);
        var (values, _) = SymmetricEigen.Solve(SecondMoments([.. points.Select(p => p.Minus(mean))]));
        return values[0] <= 0 || Math.Sqrt(Math.Max(values[1], 0)) < CollinearRatio * Math.Sqrt(values[0]);
    }

    /// <summary>
    /// Standard uncertainty, along a unit direction, of an aligned point that is itself read without error: s·√(1/n + leverage), the
    /// leverage being |d × u|² weighed by the inverse inertia of the references, d the point's arm from their centre.
    /// </summary>
    public double Uncertainty(Coordinates aligned, Coordinates direction) =>
        StandardDeviation * Math.Sqrt((1.0 / Residuals.Count) + Leverage(aligned.Minus(centre), direction));

    /// <summary>As <see cref="Uncertainty"/>, of the distance between two aligned points: the shift cancels, the rotation stays.</summary>
    public double UncertaintyBetween(Coordinates first, Coordinates second, Coordinates direction) =>
        StandardDeviation * Math.Sqrt(Leverage(first.Minus(second), direction));

    // A small rotation w moves the point by w × d; along u that is w · (d × u), and the covariance of w is s² · inertia⁻¹.
    private double Leverage(Coordinates arm, Coordinates direction)
    {
        var c = arm.Cross(direction);
        double[] components = [c.X, c.Y, c.Z];
        var sum = 0.0;
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                sum += components[i] * scatterInverse[i, j] * components[j];
            }
        }

        return Math.Max(sum, 0);
    }

    private static RigidMotion Rotation(Coordinates[] from, Coordinates[] onto)
    {
        var m = new double[3, 3];
        for (var k = 0; k < from.Length; k++)
        {
            double[] p = [from[k].X, from[k].Y, from[k].Z], q = [onto[k].X, onto[k].Y, onto[k].Z];
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                {
                    m[i, j] += p[i] * q[j];
                }
            }
        }

        double[,] n =
        {
            { m[0, 0] + m[1, 1] + m[2, 2], m[1, 2] - m[2, 1], m[2, 0] - m[0, 2], m[0, 1] - m[1, 0] },
            { m[1, 2] - m[2, 1], m[0, 0] - m[1, 1] - m[2, 2], m[0, 1] + m[1, 0], m[2, 0] + m[0, 2] },
            { m[2, 0] - m[0, 2], m[0, 1] + m[1, 0], -m[0, 0] + m[1, 1] - m[2, 2], m[1, 2] + m[2, 1] },
            { m[0, 1] - m[1, 0], m[2, 0] + m[0, 2], m[1, 2] + m[2, 1], -m[0, 0] - m[1, 1] + m[2, 2] },
        };
        var v = SymmetricEigen.Solve(n).Vectors;
        return RigidMotion.OfQuaternion(v[0, 0], v[1, 0], v[2, 0], v[3, 0]);
    }

    private static double[,] SecondMoments(Coordinates[] arms)
    {
        var m = new double[3, 3];
        foreach (var arm in arms)
        {
            double[] a = [arm.X, arm.Y, arm.Z];
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                {
                    m[i, j] += a[i] * a[j];
                }
            }
        }

        return m;
    }

    private static double[,] Inertia(Coordinates[] arms)
    {
        var m = SecondMoments(arms);
        var trace = m[0, 0] + m[1, 1] + m[2, 2];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                m[i, j] = (i == j ? trace : 0) - m[i, j];
            }
        }

        return m;
    }

    private static double[,] Inverse(double[,] symmetric)
    {
        var (values, vectors) = SymmetricEigen.Solve(symmetric);
        var inverse = new double[3, 3];
        for (var k = 0; k < 3; k++)
        {
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                {
                    inverse[i, j] += vectors[i, k] * vectors[j, k] / values[k];
                }
            }
        }

        return inverse;
    }
}
