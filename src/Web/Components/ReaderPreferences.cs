namespace Toepan.Web.Components;

/// <summary>Which units figures are shown in. Stored and exchanged data never change.</summary>
public enum UnitSystem
{
    /// <summary>Working units of the laboratory: km/h, mm, kN, N·m, g.</summary>
    Metric,

    /// <summary>mph, in, lbf, lbf·ft, g.</summary>
    Us,
}

/// <summary>How one reader wants pages shown: kept in two cookies; <c>?units=</c> in an address wins for that page.</summary>
/// <param name="Theme"><c>light</c> or <c>dark</c>; null follows the system.</param>
/// <param name="Units">Units of figures.</param>
public sealed record ReaderPreferences(string? Theme, UnitSystem Units)
{
    public const string ThemeCookie = "toepan-theme";
    public const string UnitsCookie = "toepan-units";

    public static ReaderPreferences Default { get; } = new(null, UnitSystem.Metric);

    /// <summary>Reads the preferences of a request; anything unknown is the default.</summary>
    public static ReaderPreferences From(HttpRequest request)
    {
        var asked = request.Query["units"].ToString();
        return new ReaderPreferences(
            KnownTheme(request.Cookies[ThemeCookie]),
            KnownUnits(asked.Length > 0 ? asked : request.Cookies[UnitsCookie]));
    }

    /// <summary><c>light</c>, <c>dark</c>, or null for anything else.</summary>
    public static string? KnownTheme(string? text) => text is "light" or "dark" ? text : null;

    /// <summary><c>us</c> is US; anything else is metric.</summary>
    public static UnitSystem KnownUnits(string? text) => text == "us" ? UnitSystem.Us : UnitSystem.Metric;
}
