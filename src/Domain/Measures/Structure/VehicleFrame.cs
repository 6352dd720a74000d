using Toepan.Domain.Packages;

namespace Toepan.Domain.Measures.Structure;

/// <summary>
/// Turns coordinates as a laboratory wrote them into mm along x forward, y right, z down. The axes may be in any order and of
/// either handedness; the same turn is applied to the frame before and the frame after.
/// </summary>
internal sealed class VehicleFrame
{
    private static readonly Dictionary<string, (int Axis, int Sign)> Directions = new(StringComparer.OrdinalIgnoreCase)
    {
        ["forward"] = (0, 1), ["rearward"] = (0, -1), ["right"] = (1, 1), ["left"] = (1, -1), ["down"] = (2, 1), ["up"] = (2, -1),
    };

    private static readonly Dictionary<string, double> MmPerUnit = new(StringComparer.OrdinalIgnoreCase) { ["mm"] = 1, ["cm"] = 10, ["m"] = 1000 };

    private readonly (int Axis, int Sign)[] axes;

    private VehicleFrame((int Axis, int Sign)[] axes, double mmPerUnit)
    {
        this.axes = axes;
        Scale = mmPerUnit;
    }

    /// <summary>mm in one unit of the file.</summary>
    public double Scale { get; }

    /// <summary>The frame, or null and the reason where unit or axes make no sense.</summary>
    public static (VehicleFrame? Frame, string? Reason) Of(StructureFrame written)
    {
        if (!MmPerUnit.TryGetValue(written.Unit, out var scale))
        {
            return (null, $"the unit of the structure, {written.Unit}, is not mm, cm or m");
        }

        var axes = new List<(int Axis, int Sign)>();
        foreach (var word in new[] { written.X, written.Y, written.Z })
        {
            if (!Directions.TryGetValue(word, out var direction) || axes.Exists(a => a.Axis == direction.Axis))
            {
                return (null, $"the axes x {written.X}, y {written.Y}, z {written.Z} are not three different directions");
            }

            axes.Add(direction);
        }

        return (new VehicleFrame([.. axes], scale), null);
    }

    public Coordinates Convert(Coordinates written)
    {
        var turned = new double[3];
        turned[axes[0].Axis] = axes[0].Sign * written.X * Scale;
        turned[axes[1].Axis] = axes[1].Sign * written.Y * Scale;
        turned[axes[2].Axis] = axes[2].Sign * written.Z * Scale;
        return new(turned[0], turned[1], turned[2]);
    }
}
