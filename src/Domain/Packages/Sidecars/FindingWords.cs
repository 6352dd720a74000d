namespace Toepan.Domain.Packages.Sidecars;

/// <summary>The words findings are written in. Others are kept and warned about.</summary>
public static class FindingWords
{
    public static IReadOnlySet<string> Kinds { get; } = new HashSet<string>
    {
        "door-opened", "door-jammed", "head-strike", "wheel-contact", "occupant-trapped", "dummy-damaged", "airbag-late", "airbag-missed",
        "belt-failure", "seat-pitched", "seat-anchorage-failed", "floor-buckled", "seam-separated", "column-detached", "fuel-leak", "fire",
        "isolation-lost", "voltage-present", "electrolyte-leak", "thermal-event",
    };

    public static IReadOnlySet<string> Regions { get; } = new HashSet<string>
    {
        "head", "neck", "chest", "thigh-left", "thigh-right", "lower-leg-left", "lower-leg-right", "structure", "restraint", "vehicle",
    };
}
