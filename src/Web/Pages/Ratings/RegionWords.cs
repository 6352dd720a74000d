namespace Toepan.Web.Pages.Ratings;

/// <summary>Regions in words.</summary>
public static class RegionWords
{
    /// <summary>"Left thigh" for <c>thigh.left</c> and <c>thigh-left</c>; another region is named by its key.</summary>
    public static string Name(string region) => region.Replace("lower-leg", "lowerleg", StringComparison.Ordinal).Replace('-', '.') switch
    {
        "head" => "Head",
        "neck" => "Neck",
        "chest" => "Chest",
        "thigh.left" => "Left thigh",
        "thigh.right" => "Right thigh",
        "lowerleg.left" => "Left lower leg",
        "lowerleg.right" => "Right lower leg",
        "structure" => "Structure",
        "restraint" => "Restraint",
        "vehicle" => "Vehicle",
        var other => other.Length == 0 ? other : char.ToUpperInvariant(other[0]) + other[1..].Replace('.', ' '),
    };
}
