using System.Globalization;

namespace Toepan.Api.Tests.Embargo;

/// <summary>A route parameter's value of the planted data, and one of the same shape that nothing has.</summary>
internal sealed record RouteValue(string Real, string Unknown)
{
    private const long BeyondAll = 900_000_000;

    /// <summary>Unknown = every consonant another one.</summary>
    public static RouteValue Of(string real) => new(real, string.Concat(real.Select(Other)));

    public static RouteValue OfNumber(long real) => new(real.ToString(CultureInfo.InvariantCulture), (real + BeyondAll).ToString(CultureInfo.InvariantCulture));

    private static char Other(char letter) => letter switch
    {
        'z' => 'b',
        'Z' => 'B',
        >= '0' and < '9' => (char)(letter + 1),
        '9' => '0',
        (>= 'a' and < 'z') or (>= 'A' and < 'Z') => (char)(letter + 1),
        _ => letter,
    };
}
