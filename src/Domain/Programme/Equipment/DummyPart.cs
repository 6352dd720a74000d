namespace Toepan.Domain.Programme.Equipment;

/// <summary>A part of a dummy that is checked by itself.</summary>
public enum DummyPart
{
    Head,
    Neck,
    Chest,
    Pelvis,
    ThighLeft,
    ThighRight,
    LowerLegLeft,
    LowerLegRight,
}

/// <summary>Parts, their words and their measures.</summary>
public static class DummyParts
{
    private static readonly (DummyPart Part, string Word, string[] Measures)[] All =
    [
        (DummyPart.Head, "head", ["head.", "risk.head"]),
        (DummyPart.Neck, "neck", ["neck.", "risk.neck"]),
        (DummyPart.Chest, "chest", ["chest.", "risk.chest"]),
        (DummyPart.Pelvis, "pelvis", ["pelvis."]),
        (DummyPart.ThighLeft, "left thigh", ["femur.left.", "knee.left.", "risk.thigh.left"]),
        (DummyPart.ThighRight, "right thigh", ["femur.right.", "knee.right.", "risk.thigh.right"]),
        (DummyPart.LowerLegLeft, "left lower leg", ["tibia.left.", "foot.left.", "risk.lowerleg.left"]),
        (DummyPart.LowerLegRight, "right lower leg", ["tibia.right.", "foot.right.", "risk.lowerleg.right"]),
    ];

    public static string Word(this DummyPart part) => All.Single(entry => entry.Part == part).Word;

    /// <summary>The part a measure is taken in, or null: the vehicle's and the joint risk belong to none.</summary>
    public static DummyPart? Of(string measure)
    {
        foreach (var (part, _, starts) in All)
        {
            if (Array.Exists(starts, start => measure.StartsWith(start, StringComparison.Ordinal)))
            {
                return part;
            }
        }

        return null;
    }
}
