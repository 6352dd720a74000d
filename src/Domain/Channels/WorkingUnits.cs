using System.Collections.Frozen;

namespace Toepan.Domain.Channels;

/// <summary>A unit we work in and the factor from the recorded one: working = recorded · Factor.</summary>
public readonly record struct UnitConversion(string WorkingUnit, double Factor);

/// <summary>
/// Recorded units → working units of methods edition 1: acceleration g, force kN, moment N·m, length mm, time s, angle deg, angular velocity rad/s.
/// Spelling is tolerant of case and blanks, of ·, * and . for a product and of 2, ^2, ² and (s*s) for a square.
/// </summary>
public static class WorkingUnits
{
    /// <summary>Standard acceleration of free fall, m/s², exact (3rd CGPM, 1901).</summary>
    public const double StandardGravity = 9.80665;

    private const double DegreesPerRadian = 180 / Math.PI;

    private static readonly FrozenDictionary<string, string> UnitOfDimension = new Dictionary<string, string>
    {
        ["AC"] = "g", ["FO"] = "kN", ["MO"] = "N·m", ["DS"] = "mm", ["DC"] = "mm", ["AN"] = "deg", ["AV"] = "rad/s",
        ["AA"] = "rad/s²", ["VE"] = "m/s", ["TI"] = "s",
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, UnitConversion> Spellings = new Dictionary<string, UnitConversion>
    {
        ["g"] = new("g", 1),
        ["m/(s*s)"] = new("g", 1 / StandardGravity),
        ["m/s2"] = new("g", 1 / StandardGravity),
        ["m/(s2)"] = new("g", 1 / StandardGravity),
        ["m/s/s"] = new("g", 1 / StandardGravity),
        ["n"] = new("kN", 1e-3),
        ["kn"] = new("kN", 1),
        ["nm"] = new("N·m", 1),
        ["n*m"] = new("N·m", 1),
        ["knm"] = new("N·m", 1e3),
        ["kn*m"] = new("N·m", 1e3),
        ["mm"] = new("mm", 1),
        ["cm"] = new("mm", 10),
        ["m"] = new("mm", 1000),
        ["deg"] = new("deg", 1),
        ["°"] = new("deg", 1),
        ["rad"] = new("deg", DegreesPerRadian),
        ["rad/s"] = new("rad/s", 1),
        ["deg/s"] = new("rad/s", 1 / DegreesPerRadian),
        ["°/s"] = new("rad/s", 1 / DegreesPerRadian),
        ["rad/s2"] = new("rad/s²", 1),
        ["rad/(s*s)"] = new("rad/s²", 1),
        ["m/s"] = new("m/s", 1),
        ["km/h"] = new("m/s", 1 / 3.6),
        ["s"] = new("s", 1),
        ["ms"] = new("s", 1e-3),
        ["v"] = new("V", 1),
        ["mv"] = new("mV", 1),
        ["a"] = new("A", 1),
        ["pa"] = new("Pa", 1),
        ["kpa"] = new("kPa", 1),
        ["bar"] = new("bar", 1),
        ["°c"] = new("°C", 1),
        ["degc"] = new("°C", 1),
        ["%"] = new("%", 1),
        ["1"] = new("1", 1),
        ["-"] = new("1", 1),
    }.ToFrozenDictionary();

    /// <summary>The conversion for a spelling, whatever the dimension; null where the unit is unknown.</summary>
    public static UnitConversion? Find(string unit) => Spellings.TryGetValue(Normalise(unit), out var found) ? found : null;

    /// <summary>The working unit of a physical dimension code (<c>AC</c> → g), or null where edition 1 names none.</summary>
    public static string? OfDimension(string dimension) => UnitOfDimension.GetValueOrDefault(dimension);

    private static string Normalise(string unit)
    {
        var tight = string.Concat(unit.Where(c => !char.IsWhiteSpace(c))).ToLowerInvariant();
        return tight.Replace('·', '*').Replace('⋅', '*').Replace("**", "^", StringComparison.Ordinal).Replace("^", string.Empty, StringComparison.Ordinal)
            .Replace("²", "2", StringComparison.Ordinal).Replace("n.m", "n*m", StringComparison.Ordinal);
    }
}
