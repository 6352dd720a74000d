namespace Toepan.Domain.Packages;

/// <summary>What a measured point is for.</summary>
public enum PointRole
{
    /// <summary>On structure taken as undeformed; ties the two measuring frames together.</summary>
    Reference,

    /// <summary>Its displacement is wanted.</summary>
    Measured,
}

/// <summary>Three coordinates in the file's unit and axes.</summary>
public readonly record struct Coordinates(double X, double Y, double Z);

/// <summary>One row of Static/points.csv, as written: not converted, not aligned. A blank coordinate makes its side null.</summary>
public sealed record StructuralPoint(string Name, PointRole Role, Coordinates? Before, Coordinates? After, int Line);

/// <summary>One row of Static/clearances.csv: a free distance before the crash, in structure.unit, and the point that closes it.</summary>
public sealed record Clearance(string Name, string OpposingPoint, double Distance, int Line);
