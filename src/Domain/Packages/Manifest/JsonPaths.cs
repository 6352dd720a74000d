using System.Globalization;
using System.Text.RegularExpressions;

namespace Toepan.Domain.Packages.Manifest;

/// <summary>
/// JSON paths as problems and unknown members name them: <c>$.vehicle.key</c>, <c>$.occupants[0]</c>; a name that is no identifier stands
/// in brackets with its quotes and backslashes escaped, <c>$['impact speed']</c> (RFC 9535).
/// </summary>
internal static partial class JsonPaths
{
    public const string Root = "$";

    public static string Member(string parent, string name) =>
        Identifier().IsMatch(name)
            ? $"{parent}.{name}"
            : $"{parent}['{name.Replace(@"\", @"\\", StringComparison.Ordinal).Replace("'", @"\'", StringComparison.Ordinal)}']";

    public static string Item(string parent, int index) => $"{parent}[{index.ToString(CultureInfo.InvariantCulture)}]";

    /// <summary>The member's name where <paramref name="path"/> is a direct member of <paramref name="parent"/>; else null.</summary>
    public static string? MemberName(string parent, string path)
    {
        if (!path.StartsWith(parent, StringComparison.Ordinal))
        {
            return null;
        }

        var rest = path[parent.Length..];
        if (rest.StartsWith('.') && Identifier().IsMatch(rest[1..]))
        {
            return rest[1..];
        }

        return Bracketed().Match(rest) is { Success: true } match ? Escape().Replace(match.Groups[1].Value, "$1") : null;
    }

    [GeneratedRegex(@"^[A-Za-z_][A-Za-z0-9_]*\z", RegexOptions.CultureInvariant)]
    private static partial Regex Identifier();

    [GeneratedRegex(@"^\['((?:[^'\\]|\\.)*)'\]\z", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"\\(.)", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex Escape();
}
