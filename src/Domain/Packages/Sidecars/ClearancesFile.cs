using System.Globalization;

namespace Toepan.Domain.Packages.Sidecars;

/// <summary>Static/clearances.csv: free distances before the crash.</summary>
internal static class ClearancesFile
{
    public static string[] Columns { get; } = ["clearance", "opposing_point", "distance"];

    /// <summary>Every clearance once; of a name given twice the first row counts.</summary>
    /// <param name="table">The file.</param>
    /// <param name="points">Points an opposing point must be among; null where they are not known.</param>
    public static IReadOnlyList<Clearance> Read(CsvTable table, IReadOnlyList<StructuralPoint>? points)
    {
        var clearances = new Dictionary<string, Clearance>();
        foreach (var row in table.Rows())
        {
            if (Clearance(row, table.Problems) is not { } clearance)
            {
                continue;
            }

            if (!clearances.TryAdd(clearance.Name, clearance))
            {
                table.Problems.Warn(ProblemCodes.ClearanceTwice, $"The clearance {clearance.Name} is there twice; line {clearances[clearance.Name].Line} is used.", row.Place, clearance.Name);
            }
            else if (points is not null && !points.Any(point => point.Name == clearance.OpposingPoint))
            {
                table.Problems.Warn(ProblemCodes.ClearancePoint, $"The opposing point {clearance.OpposingPoint} is not in points.csv.", row.Place, clearance.OpposingPoint);
            }
        }

        return [.. clearances.Values];
    }

    private static Clearance? Clearance(CsvRow row, ProblemList problems)
    {
        var name = row.Name("clearance");
        var point = row.Name("opposing_point");
        if (!row.TryNumber("distance", out var distance) || name is null || point is null)
        {
            return null;
        }

        if (distance is null or < 0)
        {
            var shown = distance?.ToString("R", CultureInfo.InvariantCulture);
            problems.Reject(ProblemCodes.CsvNumber, $"The distance is {shown ?? "blank"}; a number not below 0 is needed.", row.Place, shown ?? "", "0");
            return null;
        }

        return new Clearance(name, point, distance.Value, row.Line);
    }
}
