using System.Globalization;
using Toepan.Domain.Analysis.Holds;
using Toepan.Domain.Analysis.Keystones;
using Toepan.Domain.Ratings;
using Toepan.Web.Components;
using Toepan.Web.Pages.Measures;

namespace Toepan.Web.Pages.Analysis;

/// <summary>Chances, moves and keystones in plain words.</summary>
public static class HoldsWords
{
    /// <summary>"83 %"; never rounded to a certainty that it is not.</summary>
    public static string Chance(double chance) => chance switch
    {
        0 => "none in 10 000 draws",
        1 => "all of 10 000 draws",
        < 0.01 => "under 1 %",
        > 0.99 => "over 99 %",
        _ => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(chance * 100, MidpointRounding.AwayFromZero):F0} %"),
    };

    /// <summary>"72 % to 85 %", or one figure where both agree.</summary>
    public static string Both(TwoChances chances)
    {
        var (low, high) = (Chance(Math.Min(chances.Independent, chances.Correlated)), Chance(Math.Max(chances.Independent, chances.Correlated)));
        return low == high ? low : $"{low} to {high}";
    }

    /// <summary>A figure with its unit, in the reader's units.</summary>
    public static string Figure(double? value, string code, string unit, UnitSystem units)
    {
        var shown = DisplayUnits.Show(value, code.StartsWith("risk.", StringComparison.Ordinal) ? "probability" : unit, units);
        return $"{shown.Number} {shown.Unit}".Trim();
    }

    public static string Name(LevelInput input, int rated) => input.Position is { } seat && seat != rated
        ? string.Create(CultureInfo.InvariantCulture, $"{MeasureWords.Title(input.Code)}, seat {seat}")
        : MeasureWords.Title(input.Code);

    /// <summary>What leaving a keystone out does.</summary>
    public static string Effect(Keystone item) => item.Effect switch
    {
        KeystoneEffect.Other => $"the level would be {item.Overall!.Value.Protection()}",
        KeystoneEffect.Open => $"the level could be {string.Join(" or ", Levels(item).Select(level => level.Word()))} protection",
        KeystoneEffect.Certain => "not rated as it stands, but no value could change the level",
        _ => "nothing changes",
    };

    private static IEnumerable<ProtectionLevel> Levels(Keystone item) =>
        (item.Overall is { } level ? item.Possible.Append(level) : item.Possible).Distinct().Order();
}
