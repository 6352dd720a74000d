using Toepan.Domain.Packages;

namespace Toepan.Domain.Measures.Structure;

/// <summary>A measured point in mm, x forward, y right, z down; before and after still stand in frames of their own.</summary>
internal sealed record FramedPoint(string Name, PointRole Role, Coordinates? Before, Coordinates? After, int Line)
{
    /// <summary>Both positions are known.</summary>
    public bool Complete => Before is not null && After is not null;

    /// <summary>The first row of each name, converted; a non-finite coordinate counts as blank.</summary>
    public static List<FramedPoint> Of(IReadOnlyList<StructuralPoint> rows, VehicleFrame frame, List<Problem> problems)
    {
        var points = new Dictionary<string, FramedPoint>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            if (!points.TryAdd(row.Name, new(row.Name, row.Role, In(frame, row.Before), In(frame, row.After), row.Line)))
            {
                problems.Add(new(
                    ProblemSeverity.Warning, "structure.point-twice", $"Point {row.Name} is given twice; the first row is used.",
                    "Static/points.csv", row.Line));
            }
        }

        return [.. points.Values];
    }

    private static Coordinates? In(VehicleFrame frame, Coordinates? written) =>
        written is { } given && given.IsFinite() ? frame.Convert(given) : null;
}
