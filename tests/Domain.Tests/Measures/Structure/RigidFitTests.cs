using System.Text.Json;
using Toepan.Domain.Measures.Structure;
using Toepan.Domain.Packages;
using Xunit;

namespace Toepan.Domain.Tests.Measures.Structure;

public sealed class RigidFitTests
{
    private sealed record ReferenceCase(double[][] Pre, double[][] Post, double[] Target, double[] Aligned, double[] Rotation, double Rms, double[] Residuals);

    private static readonly JsonSerializerOptions Options = new() { PropertyNameCaseInsensitive = true };

    /// <summary>220 random fits of scipy.spatial.transform.Rotation.align_vectors (scipy 1.10.1), tests/reference/make_structure.py.</summary>
    [Fact]
    public void Of_RandomPoints_AgreesWithScipy()
    {
        var path = Path.Combine(AppContext.BaseDirectory, "reference", "structure.json");
        var cases = JsonSerializer.Deserialize<ReferenceCase[]>(File.ReadAllText(path), Options)!;

        Assert.True(cases.Length >= 200);
        foreach (var c in cases)
        {
            var fit = RigidFit.Of([.. c.Post.Select(Point)], [.. c.Pre.Select(Point)]);
            Assert.All(Rows(fit.Motion).Zip(c.Rotation), pair => Assert.Equal(pair.Second, pair.First, 1e-11));
            Assert.All(Parts(fit.Motion.Apply(Point(c.Target))).Zip(c.Aligned), pair => Near(pair.Second, pair.First));
            Near(c.Rms, fit.Rms);
            Assert.All(fit.Residuals.Zip(c.Residuals), pair => Near(pair.Second, pair.First));
        }
    }

    [Fact]
    public void Of_PlanarPoints_GivesAProperRotation()
    {
        Coordinates[] pre = [new(0, 0, 0), new(1000, 0, 0), new(0, 800, 0), new(900, 700, 0)];
        Coordinates[] post = [.. pre.Select(p => new Coordinates(p.Y, p.X, -p.Z + 5))];

        var fit = RigidFit.Of(post, pre);

        Assert.Equal(1, fit.Motion.Row1.Dot(fit.Motion.Row2.Cross(fit.Motion.Row3)), 1e-12);
        Assert.Equal(0, fit.Rms, 1e-9);
    }

    [Fact]
    public void Of_MirroredPoints_DoesNotReflect()
    {
        Coordinates[] pre = [new(0, 0, 0), new(1000, 0, 0), new(0, 800, 0), new(100, 200, 600)];
        Coordinates[] mirrored = [.. pre.Select(p => p with { Y = -p.Y })];

        var fit = RigidFit.Of(mirrored, pre);

        Assert.Equal(1, fit.Motion.Row1.Dot(fit.Motion.Row2.Cross(fit.Motion.Row3)), 1e-12);
        Assert.True(fit.Rms > 50);
    }

    [Theory]
    [InlineData(9.9, true)]
    [InlineData(10.3, false)]
    public void AreCollinear_WidthAgainstLength_TurnsAtOnePerCent(double halfWidth, bool collinear)
    {
        // Singular values √2·1000 along x and √2·halfWidth along y.
        Coordinates[] points = [new(-1000, 0, 0), new(1000, 0, 0), new(0, -halfWidth, 0), new(0, halfWidth, 0)];

        Assert.Equal(collinear, RigidFit.AreCollinear(points));
    }

    [Fact]
    public void AreCollinear_OnePointRepeated_IsTrue() => Assert.True(RigidFit.AreCollinear([new(1, 2, 3), new(1, 2, 3), new(1, 2, 3)]));

    [Fact]
    public void Of_TwoPoints_IsRefused() =>
        Assert.Throws<ArgumentException>(() => RigidFit.Of([new(0, 0, 0), new(1, 0, 0)], [new(0, 0, 0), new(1, 0, 0)]));

    /// <summary>
    /// The uncertainty of an extrapolated point against 20 000 seeded draws of normal reference noise: the mean square error must be
    /// σ²(1/n + leverage) and s² must average σ², each within 4 % (a standard error is √(2/20 000) = 1 %).
    /// </summary>
    [Fact]
    public void Uncertainty_OfExtrapolatedPoint_AgreesWithMonteCarlo()
    {
        const int Draws = 20_000;
        const double Sigma = 0.4;
        Coordinates[] pre = [new(-420, -760, 120), new(-425, 758, 118), new(-900, -420, 60), new(-905, 418, 62), new(-40, -795, -560), new(-650, 5, -40)];
        Coordinates target = new(1200, -400, 80);
        Coordinates[] axes = [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)];
        var random = new Random(64);
        var (squares, scatter, claimed) = (new double[3], 0.0, new double[3]);
        for (var draw = 0; draw < Draws; draw++)
        {
            var fit = RigidFit.Of([.. pre.Select(p => p.Plus(Noise(random, Sigma)))], pre);
            var error = fit.Motion.Apply(target).Minus(target);
            double[] parts = [error.X, error.Y, error.Z];
            scatter += fit.StandardDeviation * fit.StandardDeviation / Draws;
            for (var k = 0; k < 3; k++)
            {
                squares[k] += parts[k] * parts[k] / Draws;
                var u = fit.Uncertainty(target, axes[k]);
                claimed[k] += u * u / Draws;
            }
        }

        Assert.Equal(1, scatter / (Sigma * Sigma), 0.04);
        Assert.All(Enumerable.Range(0, 3), k => Assert.Equal(1, claimed[k] / squares[k], 0.04));
    }

    private static Coordinates Noise(Random random, double sigma) => new(Normal(random) * sigma, Normal(random) * sigma, Normal(random) * sigma);

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-9 * Math.Max(1, Math.Abs(expected)));

    private static Coordinates Point(double[] xyz) => new(xyz[0], xyz[1], xyz[2]);

    private static double[] Parts(Coordinates c) => [c.X, c.Y, c.Z];

    private static double[] Rows(RigidMotion m) => [.. Parts(m.Row1), .. Parts(m.Row2), .. Parts(m.Row3)];
}
