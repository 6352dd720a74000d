using Toepan.Domain.Packages;

namespace Toepan.Domain.Measures.Structure;

/// <summary>x ↦ R·x + t with a proper rotation R (determinant +1), rows given, and a shift t in the unit of the points.</summary>
public sealed record RigidMotion(Coordinates Row1, Coordinates Row2, Coordinates Row3, Coordinates Shift)
{
    public Coordinates Apply(Coordinates point) => Turn(point).Plus(Shift);

    /// <summary>The rotation alone.</summary>
    public Coordinates Turn(Coordinates direction) => new(Row1.Dot(direction), Row2.Dot(direction), Row3.Dot(direction));

    /// <summary>The rotation of a unit quaternion (w, x, y, z).</summary>
    internal static RigidMotion OfQuaternion(double w, double x, double y, double z) => new(
        new((w * w) + (x * x) - (y * y) - (z * z), 2 * ((x * y) - (w * z)), 2 * ((x * z) + (w * y))),
        new(2 * ((x * y) + (w * z)), (w * w) - (x * x) + (y * y) - (z * z), 2 * ((y * z) - (w * x))),
        new(2 * ((x * z) - (w * y)), 2 * ((y * z) + (w * x)), (w * w) - (x * x) - (y * y) + (z * z)),
        default);
}
