namespace Toepan.Domain.Channels;

/// <summary>A channel code in plain words, e.g. "head acceleration x"; what a code names that we do not know stays as it is written.</summary>
public static class ChannelWords
{
    private static readonly Dictionary<string, string> Locations = new(StringComparer.Ordinal)
    {
        ["HEAD"] = "head", ["NECK"] = "neck", ["CHST"] = "chest", ["THSP"] = "thoracic spine", ["ABDO"] = "abdomen", ["PELV"] = "pelvis", ["FEMR"] = "femur",
        ["KNSL"] = "knee slide", ["KNEE"] = "knee", ["TIBI"] = "tibia", ["FOOT"] = "foot", ["ANKL"] = "ankle", ["SEBE"] = "seat belt", ["VEHC"] = "vehicle centre",
        ["BPIL"] = "B-pillar", ["SILL"] = "sill", ["TUNN"] = "tunnel", ["ENGN"] = "engine", ["BRPE"] = "brake pedal", ["STCL"] = "steering column", ["SEAT"] = "seat", ["LUSP"] = "lumbar spine",
    };

    private static readonly Dictionary<string, string> Sides = new(StringComparer.Ordinal)
    {
        ["LE"] = "left", ["RI"] = "right", ["UP"] = "upper", ["LO"] = "lower",
    };

    private static readonly Dictionary<string, string> Dimensions = new(StringComparer.Ordinal)
    {
        ["AC"] = "acceleration", ["FO"] = "force", ["MO"] = "moment", ["DS"] = "displacement", ["DC"] = "displacement", ["AV"] = "angular velocity", ["AA"] = "angular acceleration",
        ["AN"] = "angle", ["VE"] = "velocity", ["VO"] = "voltage", ["TI"] = "time", ["PR"] = "pressure",
    };

    public static string Of(string code)
    {
        if (ChannelCode.TryParse(code) is not { } parsed)
        {
            return code;
        }

        var words = new List<string>();
        Add(words, Sides.GetValueOrDefault(parsed.FineLocation1));
        Add(words, Sides.GetValueOrDefault(parsed.FineLocation2));
        Add(words, Locations.GetValueOrDefault(parsed.MainLocation, parsed.MainLocation));
        Add(words, Dimensions.GetValueOrDefault(parsed.Dimension, parsed.Dimension));
        Add(words, parsed.Direction switch { 'X' => "x", 'Y' => "y", 'Z' => "z", 'R' => "resultant", _ => null });
        return string.Join(' ', words);
    }

    private static void Add(List<string> words, string? word)
    {
        if (word is not null)
        {
            words.Add(word);
        }
    }
}
