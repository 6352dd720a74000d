using System.Globalization;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Packages.Sidecars;

/// <summary>Movie/findings.csv: what film and inspection showed.</summary>
internal static class FindingsFile
{
    public static string[] Required { get; } = ["time_ms", "kind", "region", "severity"];

    public static string[] Optional { get; } = ["camera", "note", "position"];

    /// <summary>Every row, in order. Unknown kinds and regions are kept and warned about; an unknown severity is an error.</summary>
    /// <param name="table">The file.</param>
    /// <param name="occupants">Occupants whose positions a finding may name; null where they are not known.</param>
    public static IReadOnlyList<Finding> Read(CsvTable table, IReadOnlyList<Occupant>? occupants)
    {
        var findings = new List<Finding>();
        foreach (var row in table.Rows())
        {
            if (Finding(row, table.Problems) is { } finding)
            {
                findings.Add(finding);
                WarnOfUnknown(finding, row.Place, occupants, table.Problems);
            }
        }

        return findings;
    }

    private static Finding? Finding(CsvRow row, ProblemList problems)
    {
        var timed = row.TryNumber("time_ms", out var time);
        var kind = row.Name("kind");
        var severity = row.OneOf("severity", "note", "concern", "severe");
        var seated = TryPosition(row, problems, out var position);
        if (!timed || !seated || kind is null || severity is null)
        {
            return null;
        }

        var camera = row.Text("camera");
        return new Finding(
            time, camera.Length == 0 ? null : camera, kind, row.Text("region").ToLowerInvariant(), Enum.Parse<FindingSeverity>(severity, ignoreCase: true),
            row.Text("note"), position, row.Line);
    }

    private static bool TryPosition(CsvRow row, ProblemList problems, out int? position)
    {
        var text = row.Text("position");
        position = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= 9 ? number : null;
        if (position is null && text.Length > 0)
        {
            problems.Reject(ProblemCodes.CsvValue, $"The position is '{ProblemList.Show(text)}'; it must be 1 to 9 or blank.", row.Place, text, "1 to 9");
            return false;
        }

        return true;
    }

    private static void WarnOfUnknown(Finding finding, Place place, IReadOnlyList<Occupant>? occupants, ProblemList problems)
    {
        if (!FindingWords.Kinds.Contains(finding.Kind))
        {
            problems.Warn(ProblemCodes.FindingKind, $"The kind '{ProblemList.Show(finding.Kind)}' is unknown; the finding is kept and caps nothing.", place, finding.Kind);
        }

        if (!FindingWords.Regions.Contains(finding.Region))
        {
            problems.Warn(ProblemCodes.FindingRegion, $"The region '{ProblemList.Show(finding.Region)}' is unknown; the finding is kept.", place, finding.Region);
        }

        if (finding.Position is { } position && occupants is not null && occupants.All(occupant => occupant.Position != position))
        {
            problems.Warn(ProblemCodes.FindingPosition, $"No occupant sits at position {position}; the finding is kept.", place, position.ToString(CultureInfo.InvariantCulture));
        }
    }
}
