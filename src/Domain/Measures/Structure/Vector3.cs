using Toepan.Domain.Packages;

namespace Toepan.Domain.Measures.Structure;

/// <summary>Double-precision vector arithmetic on <see cref="Coordinates"/>; the framework's Vector3 is single precision.</summary>
public static class Vector3
{
    public static Coordinates Plus(this Coordinates a, Coordinates b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Coordinates Minus(this Coordinates a, Coordinates b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Coordinates Times(this Coordinates a, double factor) => new(a.X * factor, a.Y * factor, a.Z * factor);

    public static double Dot(this Coordinates a, Coordinates b) => (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

    public static Coordinates Cross(this Coordinates a, Coordinates b) =>
        new((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));

    public static double Length(this Coordinates a) => Math.Sqrt(a.Dot(a));

    public static Coordinates Mean(IReadOnlyList<Coordinates> points)
    {
        var sum = default(Coordinates);
        foreach (var point in points)
        {
            sum = sum.Plus(point);
        }

        return sum.Times(1.0 / points.Count);
    }

    public static bool IsFinite(this Coordinates a) => double.IsFinite(a.X) && double.IsFinite(a.Y) && double.IsFinite(a.Z);
}
