namespace Toepan.Domain.Packages.Sidecars;

/// <summary>Static/points.csv: point, role, and its coordinates before and after, by column name.</summary>
internal static class PointsFile
{
    public static string[] Columns { get; } = ["point", "role", "pre_x", "pre_y", "pre_z", "post_x", "post_y", "post_z"];

    /// <summary>Every point once, in order: of a name given twice the first row counts.</summary>
    public static IReadOnlyList<StructuralPoint> Read(CsvTable table)
    {
        var points = new Dictionary<string, StructuralPoint>();
        foreach (var row in table.Rows())
        {
            if (Point(row, table.Problems) is { } point && !points.TryAdd(point.Name, point))
            {
                table.Problems.Warn(ProblemCodes.PointTwice, $"The point {point.Name} is there twice; line {points[point.Name].Line} is used.", row.Place, point.Name);
            }
        }

        return [.. points.Values];
    }

    private static StructuralPoint? Point(CsvRow row, ProblemList problems)
    {
        var name = row.Name("point");
        var role = row.OneOf("role", "reference", "measured");
        var before = Side(row, "pre_");
        var after = Side(row, "post_");
        if (name is null || role is null || !before.Good || !after.Good)
        {
            return null;
        }

        if (before.Value is null || after.Value is null)
        {
            problems.Warn(ProblemCodes.PointBlank, $"The point {name} has a blank coordinate; it is left out of what needs both sides.", row.Place, name);
        }

        return new StructuralPoint(name, role == "reference" ? PointRole.Reference : PointRole.Measured, before.Value, after.Value, row.Line);
    }

    // Good with no value: a coordinate is blank.
    private static (bool Good, Coordinates? Value) Side(CsvRow row, string prefix)
    {
        var good = row.TryNumber(prefix + "x", out var x) & row.TryNumber(prefix + "y", out var y) & row.TryNumber(prefix + "z", out var z);
        return (good, x is null || y is null || z is null ? null : new Coordinates(x.Value, y.Value, z.Value));
    }
}
