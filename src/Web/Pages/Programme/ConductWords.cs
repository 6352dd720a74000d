using System.Globalization;
using Toepan.Domain.Programme;

namespace Toepan.Web.Pages.Programme;

/// <summary>Conduct items and verdicts in words.</summary>
public static class ConductWords
{
    /// <summary>"Impact speed"; an item this version does not know keeps its key.</summary>
    public static string Name(string item) => item switch
    {
        "impactSpeed" => "Impact speed",
        "speedAgreement" => "Agreement of speed readings",
        "overlap" => "Overlap",
        "dummyTemperature" => "Dummy temperature",
        "testMass" => "Test mass",
        "impactAngle" => "Impact angle",
        "verticalAlignment" => "Vertical alignment",
        _ => item,
    };

    public static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Within => "within",
        Verdict.Outside => "outside",
        _ => "not recorded",
    };

    /// <summary>"impact speed is outside its bounds".</summary>
    public static string Sentence(ConductVerdict item)
    {
        var name = Name(item.Item);
        var lower = string.Concat(char.ToLower(name[0], CultureInfo.InvariantCulture).ToString(), name.AsSpan(1));
        return item.Verdict == Verdict.NotRecorded ? $"{lower} is not recorded and counts as outside" : $"{lower} is outside its bounds";
    }
}
