using Toepan.Domain.Packages;

namespace Toepan.Domain.Measures.Structure;

/// <summary>A displaced point as reported, with its unrounded aligned position for what is computed from two points.</summary>
internal sealed record Displacement(PointDisplacement Point, Coordinates Aligned, double ResultantUncertainty)
{
    private static readonly Coordinates AlongX = new(1, 0, 0), AlongY = new(0, 1, 0), AlongZ = new(0, 0, 1);

    public string Name => Point.Point;

    public static Displacement Of(RigidFit fit, FramedPoint point)
    {
        var before = point.Before!.Value;
        var after = fit.Motion.Apply(point.After!.Value);
        var moved = after.Minus(before);
        var length = moved.Length();
        var (ux, uy, uz) = (fit.Uncertainty(after, AlongX), fit.Uncertainty(after, AlongY), fit.Uncertainty(after, AlongZ));
        var largest = Math.Max(ux, Math.Max(uy, uz));
        var reported = new PointDisplacement(
            point.Name, Rounded(before), Rounded(after), Digits.Round12(-moved.X), Digits.Round12(moved.Y), Digits.Round12(-moved.Z),
            Digits.Round12(length), Digits.Round12(largest))
        {
            Uncertainties = Rounded(new(ux, uy, uz)),
        };
        return new(reported, after, length > 0 ? fit.Uncertainty(after, moved.Times(1 / length)) : largest);
    }

    private static Coordinates Rounded(Coordinates c) => new(Digits.Round12(c.X), Digits.Round12(c.Y), Digits.Round12(c.Z));
}
