using System.Globalization;
using Toepan.Domain.Analysis.Repeats;
using Toepan.Web.Pages.Channels;
using Toepan.Web.Pages.Measures;

namespace Toepan.Web.Pages.Analysis;

/// <summary>What repeats, in words.</summary>
public static class RepeatsWords
{
    private const int MostNamed = 6;

    public static string Part(RepeatPart part) => part switch
    {
        RepeatPart.Structure => "The structure",
        RepeatPart.Pulse => "The pulse",
        _ => "The dummies",
    };

    /// <summary>"The pulse repeats."</summary>
    public static string Verdict(PartVerdict part)
    {
        var many = part.Part == RepeatPart.Dummy;
        return Part(part.Part) + part.Verdict switch
        {
            Repeating.Repeats => many ? " repeat." : " repeats.",
            Repeating.InPart => many ? " repeat in part." : " repeats in part.",
            Repeating.DoesNot => many ? " do not repeat." : " does not repeat.",
            _ => " cannot be compared.",
        };
    }

    /// <summary>"5 of 6 items came out alike."</summary>
    public static string Count(PartVerdict part) => part.Items == 0
        ? "Nothing of it was measured in both."
        : string.Create(CultureInfo.InvariantCulture, $"{part.Alike} of {part.Items} measures and curves came out alike.");

    /// <summary>The items that did not, furthest apart first.</summary>
    public static string Apart(PartVerdict part)
    {
        var named = string.Join("; ", part.Apart.Take(MostNamed).Select(Item));
        var more = part.Apart.Count - MostNamed;
        return $"Apart: {named}{(more > 0 ? string.Create(CultureInfo.InvariantCulture, $"; and {more} more") : "")}.";
    }

    /// <summary>"Thigh force, compression up, left".</summary>
    public static string Curve(string key, string name) => key == "vehicle.velocity" ? "Vehicle velocity"
        : Single.Contains(key) ? PlotModels.TitleOf(key)
        : $"{PlotModels.TitleOf(key)}, {name}";

    // Sets of one curve, whose title says it all.
    private static readonly HashSet<string> Single = ["vehicle.pulse", "vehicle.travel", "head.resultant", "chest.deflection", "neck.force", "neck.moment"];

    private static string Item(string item)
    {
        var space = item.IndexOf(' ', StringComparison.Ordinal);
        return space < 0 ? MeasureWords.Title(item) : $"curve: {Curve(item[..space], item[(space + 1)..])}";
    }
}
