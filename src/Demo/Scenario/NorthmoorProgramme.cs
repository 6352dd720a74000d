using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using static Toepan.Demo.Scenario.Fleet;

namespace Toepan.Demo.Scenario;

/// <summary>The runs of the demo programme, FO-0001 onward, in the order they were done.</summary>
public static class NorthmoorProgramme
{
    private static readonly Occupant Driver = new(1, "driver", DummyType.H3);
    private static readonly Occupant SmallDriver = new(1, "driver", DummyType.HF);
    private static readonly Occupant SmallPassenger = new(3, "passenger", DummyType.HF);
    private static readonly DateOnly FirstDay = new(2031, 2, 3);

    public static IReadOnlyList<DemoRun> Runs { get; } = [.. Vans(), .. Electrics(), .. Pickups()];

    private static IEnumerable<DemoRun> Vans()
    {
        yield return Run(1, Voyle) with { Occupants = [Driver, SmallPassenger] };
        yield return Run(2, Porter);
        yield return Run(3, Drayman) with { Findings = [Seen("belt-failure", "restraint", FindingSeverity.Note, "Webbing scuffed at the upper guide; it held."), Seen("floor-buckled", "structure", FindingSeverity.Concern, "Floor folded ahead of the seat cross-member.")] };
        yield return Run(4, Carrick) with { Findings = [Seen("door-opened", "vehicle", FindingSeverity.Concern, "Driver's door came open at the latch.", 84), Seen("occupant-trapped", "lower-leg-left", FindingSeverity.Concern, "Left foot held between pedal and footwell until cut free.")] };
        yield return Run(5, Lade) with { OverlapPercent = 42.3m };
        yield return Run(6, Lade) with { RepeatOf = "FO-0005" };
        yield return Run(7, Porter) with { SpeedKmh = [65.9m, 66.0m] };
        yield return Run(8, Porter) with { RepeatOf = "FO-0007", Defects = [new("11FEMRRI00", DefectKind.Dead)] };
        yield return Run(9, Voyle) with { Occupants = [SmallDriver] };
        yield return Run(10, Drayman) with { Defects = [new("11HEAD0000H3ACX", DefectKind.Clipped, 0.8)], Findings = [Seen("head-strike", "head", FindingSeverity.Concern, "Head goes through the bag and touches the wheel rim.", 88)] };
    }

    private static IEnumerable<DemoRun> Electrics()
    {
        yield return Run(11, Minnow) with { Occupants = [Driver, SmallPassenger] };
        yield return Run(12, Ilex);
        yield return Run(13, Quince) with { Occupants = [SmallDriver], Findings = [Seen("electrolyte-leak", "vehicle", FindingSeverity.Note, "Damp patch under the front cell tray; no flow after 30 min.")] };
        yield return Run(14, Fennel) with { Findings = [Seen("thermal-event", "vehicle", FindingSeverity.Severe, "Smoke from the battery tray 11 minutes after the run."), Seen("isolation-lost", "vehicle", FindingSeverity.Severe, "Isolation 41 ohm per volt at 5 s.")] };
        yield return Run(15, Elvar) with { TemperatureC = [22.9m, 23.1m] };
        yield return Run(16, Elvar) with { RepeatOf = "FO-0015" };
        yield return Run(17, Minnow) with { RepeatOf = "FO-0011", Occupants = [Driver, SmallPassenger], SpeedKmh = [64.21m, 64.25m] };
        yield return Run(18, Ilex) with { Defects = [new("11CHST0003", DefectKind.Reversed)] };
        yield return Run(19, Quince) with { Defects = [new("11TIBILELO", DefectKind.Missing)], OverlapPercent = null };
        yield return Run(20, Elvar) with { Occupants = [SmallDriver] };
    }

    private static IEnumerable<DemoRun> Pickups()
    {
        yield return Run(21, Fellside);
        yield return Run(22, Causeway) with { Findings = [Seen("wheel-contact", "neck", FindingSeverity.Concern, "Chin rides over the lower rim.", 96), Seen("door-jammed", "vehicle", FindingSeverity.Concern, "Driver's door needed a lever bar.")] };
        yield return Run(23, Bullace) with { Findings = [Seen("fire", "vehicle", FindingSeverity.Severe, "Flame at the exhaust side of the engine bay, put out by the crew."), Seen("seat-anchorage-failed", "restraint", FindingSeverity.Concern, "Inner rear seat bolt pulled through.")] };
        yield return Run(24, Moorland) with { Occupants = [Driver, SmallPassenger] };
        yield return Run(25, Skarv) with { SpeedKmh = [63.1m, 63.2m] };
        yield return Run(26, Skarv) with { RepeatOf = "FO-0025", MovedReference = "floor-rear-left" };
        yield return Run(27, Causeway) with { Defects = [new("10BPILLE", DefectKind.Dead), new("11CHST0000H3ACX", DefectKind.Ends, 0.12)] };
        yield return Run(28, Fellside) with { RepeatOf = "FO-0021", SpeedKmh = [64.61m, 64.66m] };
        yield return Run(29, Moorland) with { Occupants = [SmallDriver], Findings = [Seen("airbag-late", "restraint", FindingSeverity.Note, "Bag full 6 ms later than in the first run.", 41)] };
        yield return Run(30, Bullace) with { Occupants = [SmallDriver], Findings = [Seen("dummy-damaged", "lower-leg-right", FindingSeverity.Severe, "Right ankle joint broken."), Seen("airbag-missed", "restraint", FindingSeverity.Concern, "Head slides off the outer edge of the bag.", 90)] };
    }

    private static DemoRun Run(int number, DemoVehicle vehicle) => new()
    {
        Number = number,
        Vehicle = vehicle,
        Date = FirstDay.AddDays((number - 1) * 6),
        Occupants = [Driver],
        SpeedKmh = [64.36m + (0.01m * (number % 7)), 64.39m + (0.01m * (number % 5))],
    };

    private static Finding Seen(string kind, string region, FindingSeverity severity, string note, double? timeMs = null) =>
        new(timeMs, timeMs is null ? null : "onboard-left", kind, region, severity, note, null, 0);
}
