using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Measures.Pulse;
using Toepan.Domain.Measures.Structure;

namespace Toepan.Domain.Measures;

/// <summary>The catalogue's data.</summary>
internal static class MeasureCatalogueEntries
{
    private const string None = "–";

    /// <summary>Every measure, in reading order: from head to foot, then vehicle, structure, clearances, risks, conduct.</summary>
    public static IReadOnlyList<MeasureEntry> All { get; } = [.. Occupant(), .. Vehicle(), .. Structure(), .. Risks(), .. Conduct()];

    private static IEnumerable<MeasureEntry> Occupant() =>
    [
        new("head.hic15", "Head injury criterion, 15 ms", "", "1000", typeof(HeadInjuryCriterion)),
        new("head.hic36", "Head injury criterion, 36 ms", "", "1000", typeof(HeadInjuryCriterion)),
        new("head.a3ms", "Head acceleration exceeded for 3 ms", "g", "1000", typeof(ThreeMillisecond)),
        new("head.peak", "Peak head acceleration", "g", "1000", typeof(HeadPeak)),
        new("neck.tension", "Neck tension", "kN", "1000", typeof(NeckForces)),
        new("neck.compression", "Neck compression", "kN", "1000", typeof(NeckForces)),
        new("neck.shear", "Neck shear force", "kN", "1000", typeof(NeckForces)),
        new("neck.flexion", "Neck bending, chin to chest", "N·m", "600", typeof(NeckMoments)),
        new("neck.extension", "Neck bending, head thrown back", "N·m", "600", typeof(NeckMoments)),
        new("neck.nij", "Neck force and bending together, Nij", "", "600", typeof(NeckNij)),
        new("chest.a3ms", "Chest acceleration exceeded for 3 ms", "g", "180", typeof(ThreeMillisecond)),
        new("chest.deflection", "Chest deflection", "mm", "180 (H3), 600 (HF)", typeof(ChestDeflection)),
        new("chest.viscous", "Chest viscous criterion", "m/s", "180 (H3), 600 (HF)", typeof(ChestViscous)),
        new("pelvis.a3ms", "Pelvis acceleration exceeded for 3 ms", "g", "1000", typeof(ThreeMillisecond)),
        .. Sides("femur.{0}.compression", "{0} thigh compression", "kN", "600", typeof(FemurCompression)),
        .. Sides("knee.{0}.slide", "{0} knee slide", "mm", "180", typeof(KneeSlide)),
        new("tibia.left.upper.index", "Left tibia index, upper end", "", "600", typeof(TibiaIndex)),
        new("tibia.left.lower.index", "Left tibia index, lower end", "", "600", typeof(TibiaIndex)),
        new("tibia.right.upper.index", "Right tibia index, upper end", "", "600", typeof(TibiaIndex)),
        new("tibia.right.lower.index", "Right tibia index, lower end", "", "600", typeof(TibiaIndex)),
        .. Sides("tibia.{0}.compression", "{0} tibia compression", "kN", "600", typeof(TibiaCompression)),
        .. Sides("foot.{0}.a3ms", "{0} foot acceleration exceeded for 3 ms", "g", "1000", typeof(FootAcceleration)),
    ];

    private static IEnumerable<MeasureEntry> Vehicle() =>
    [
        new("vehicle.deltav", "Velocity change of the vehicle, rebound included", "km/h", "180", typeof(VehicleDeltaV)),
        new("vehicle.peak", "Peak deceleration of the vehicle", "g", "60", typeof(VehiclePeak)),
        new("vehicle.stroke", "Travel after contact, vehicle and barrier together", "mm", "180", typeof(VehicleStroke)),
        new("vehicle.crush.static", "Crush of the front, measured afterwards", "mm", None, typeof(StructureMeasures)),
        new("vehicle.olc", "Occupant load criterion", "g", "180", typeof(VehicleOlc)),
    ];

    private static IEnumerable<MeasureEntry> Structure() =>
    [
        new("structure.<point>.rearward", "Rearward displacement of a point", "mm", None, typeof(StructureMeasures)),
        new("structure.<point>.lateral", "Displacement of a point to the right", "mm", None, typeof(StructureMeasures)),
        new("structure.<point>.upward", "Upward displacement of a point", "mm", None, typeof(StructureMeasures)),
        new("structure.<point>.resultant", "Displacement of a point, all directions", "mm", None, typeof(StructureMeasures)),
        new("structure.footwell.rearward", "Rearward displacement of the footwell, its worst point", "mm", None, typeof(StructureMeasures)),
        new("structure.opening.closure", "Closure of the door opening", "mm", None, typeof(StructureMeasures)),
        new("structure.alignment.rms", "Misfit of the reference points", "mm", None, typeof(StructureMeasures)),
        new("clearance.<name>.residual", "Distance left in front of the dummy", "mm", None, typeof(StructureMeasures)),
        new("clearance.<name>.residual.smaller", "Distance left with a smaller driver's seat forward", "mm", None, typeof(StructureMeasures)),
    ];

    private static IEnumerable<MeasureEntry> Conduct() =>
    [
        new("conduct.speed", "Impact speed", "km/h", None, typeof(ConductSpeed)),
        new("conduct.energyratio", "Impact energy against nominal", "", None, typeof(ConductEnergyRatio)),
    ];

    private static IEnumerable<MeasureEntry> Risks() =>
    [
        new("risk.head", "Risk of a serious head injury", "probability", "1000", typeof(RegionRisk)),
        new("risk.neck", "Risk of a serious neck injury", "probability", "600 or 1000", typeof(RegionRisk)),
        new("risk.chest", "Risk of a serious chest injury", "probability", "180 (H3), 600 (HF)", typeof(RegionRisk)),
        .. Sides("risk.thigh.{0}", "Risk of a moderate {0} thigh injury", "probability", "600", typeof(RegionRisk)),
        .. Sides("risk.lowerleg.{0}", "Risk of a moderate {0} lower-leg injury", "probability", "600", typeof(LowerLegRisk)),
        new("risk.joint", "Risk of any of these injuries", "probability", None, typeof(JointRisk)),
    ];

    private static IEnumerable<MeasureEntry> Sides(string code, string title, string unit, string filterClass, Type explains) =>
        Side.Both.Select(side => new MeasureEntry(Fill(code, side), Sentence(Fill(title, side)), unit, filterClass, explains));

    private static string Fill(string text, Side side) => text.Replace("{0}", side.Word, StringComparison.Ordinal);

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
