using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Toepan.Domain.Packages;

/// <summary>
/// Ids of findings. A package's finding is named for what it says, so that the same row in another package of the run is the same finding: <c>p</c> and
/// 12 hex digits of SHA-256 over time, camera, kind, region, severity, note and position; of equal rows the second ends in <c>-2</c>, and so on. A finding
/// added on the page is <c>a</c> and a number.
/// </summary>
public static class FindingId
{
    private const int HexDigits = 12;

    /// <summary>The id of an addition.</summary>
    public static string OfAddition(int number) => string.Create(CultureInfo.InvariantCulture, $"a{number}");

    /// <summary>The ids of a package's findings, in their order.</summary>
    public static IReadOnlyList<string> OfPackage(IReadOnlyList<Finding> findings)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        var ids = new string[findings.Count];
        for (var i = 0; i < ids.Length; i++)
        {
            var name = Name(findings[i]);
            var nth = seen[name] = seen.GetValueOrDefault(name) + 1;
            ids[i] = nth == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}-{nth}");
        }

        return ids;
    }

    private static string Name(Finding finding)
    {
        string[] parts =
        [
            finding.TimeMs?.ToString("R", CultureInfo.InvariantCulture) ?? "", finding.Camera ?? "", finding.Kind, finding.Region,
            finding.Severity.ToString(), finding.Note, finding.Position?.ToString(CultureInfo.InvariantCulture) ?? "",
        ];
        return "p" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\u001f', parts))))[..HexDigits];
    }
}
