using Toepan.Demo.Crash;
using Toepan.Demo.Scenario;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Demo.Packages;

/// <summary>One run of the scenario → its test package. The same seed and run give the same package.</summary>
public static class PackageBuilder
{
    private const double StepS = 2e-5;
    private const int Steps = 15_750;
    private const int Stride10Khz = 5;
    private const double OrdinaryMassKg = 1800;

    public static TestPackage Build(DemoRun run, int seed)
    {
        var random = new Random(unchecked((seed * 7919) + run.Number));
        var massKg = run.Vehicle.KerbMassKg + 144.5 + Math.Round(random.NextDouble() * 8, 1);
        var speedKmh = (double)run.SpeedKmh.Average();
        var stiffness = massKg / OrdinaryMassKg * (0.97 + (0.06 * random.NextDouble())) * (1.04 - (0.03 * run.Vehicle.Build.Structure));
        var vehicle = VehiclePulse.Integrate(massKg, speedKmh / 3.6, stiffness, StepS, Steps);
        var dummies = run.Occupants.Select(o => (Occupant: o, Motion: OccupantModel.Integrate(vehicle, Seat(run.Vehicle.Build, o)))).ToList();
        return new TestPackage
        {
            Programme = Programme(run, (decimal)massKg),
            TestHeader = Header(run, massKg, speedKmh),
            Channels = Channels(run, vehicle, dummies, random),
            Points = new StructureModel(random, run.Vehicle.Build.Structure, speedKmh / 64.4).Points(run.MovedReference),
            Clearances = Clearances(),
            Findings = [.. dummies.SelectMany(dummy => Usual(dummy.Occupant, dummy.Motion)), .. run.Findings],
            Attachments = [],
            ContentSha256 = "",
        };
    }

    private static ProgrammeDocument Programme(DemoRun run, decimal massKg) => new()
    {
        Test = run.Test,
        Procedure = "offset-frontal-64",
        Date = run.Date,
        Laboratory = run.Number % 2 == 0 ? "Hall 2" : "Hall 1",
        RepeatOf = run.RepeatOf,
        Vehicle = new PackageVehicle(
            run.Vehicle.Key, run.Vehicle.Make, run.Vehicle.Model, run.Vehicle.YearFrom, run.Vehicle.YearTo, run.Vehicle.Class, run.Vehicle.KerbMassKg),
        Conduct = new ConductReadings
        {
            ImpactSpeedKmh = run.SpeedKmh,
            OverlapPercent = run.OverlapPercent,
            TestMassKg = massKg,
            DeclaredTestMassKg = run.Vehicle.KerbMassKg + 150,
            DummyTemperatureC = run.TemperatureC,
            ImpactAngleDeg = 0.1m * (run.Number % 5),
            VerticalAlignmentMm = (run.Number % 13) - 6,
        },
        Occupants = run.Occupants,
        Structure = StructureFrame.Default,
    };

    private static List<RecordedChannel> Channels(
        DemoRun run, VehicleMotion vehicle, IReadOnlyList<(Occupant Occupant, OccupantMotion Motion)> dummies, Random random)
    {
        var recorder = new Recorder(random, Stride10Khz);
        var signals = VehicleChannels.All(vehicle)
            .Concat(dummies.SelectMany(dummy => new DummyChannels(dummy.Occupant, dummy.Motion, Seat(run.Vehicle.Build, dummy.Occupant)).All()));
        var channels = new List<RecordedChannel>();
        foreach (var signal in signals)
        {
            if (recorder.Record(signal, StepS, channels.Count + 1, run.Test, run.Defects) is { } channel)
            {
                channels.Add(channel);
            }
        }

        return channels;
    }

    /// <summary>The passenger has no steering wheel and no pedals: a gentler head, chest and leg.</summary>
    private static BuildQuality Seat(BuildQuality build, Occupant occupant) => occupant.Seat == "driver"
        ? build
        : build with { Head = 0.7 * build.Head, Chest = 0.85 * build.Chest, LowerLeg = 0.6 * build.LowerLeg };

    private static List<HeaderEntry> Header(DemoRun run, double massKg, double speedKmh)
    {
        (string Key, string Value)[] lines =
        [
            ("Data format edition number", "1.6"),
            ("Laboratory name", "Northmoor Vehicle Safety Trust"),
            ("Laboratory test ref. number", run.Test),
            ("Title", FormattableString.Invariant($"{run.Vehicle.Make} {run.Vehicle.Model}, offset frontal")),
            ("Timestamp", FormattableString.Invariant($"{run.Date:yyyy-MM-dd} 10:00:00")),
            ("Type of the test", "Frontal offset, deformable barrier"),
            ("Date of the test", FormattableString.Invariant($"{run.Date:yyyy-MM-dd}")),
            ("Name of test object 1", $"{run.Vehicle.Make} {run.Vehicle.Model}"),
            ("Mass test object 1", FormattableString.Invariant($"{massKg:F1}")),
            ("Velocity test object 1", FormattableString.Invariant($"{speedKmh / 3.6:F4}")),
            ("Driver position object 1", "1"),
        ];
        return [.. lines.Select((line, index) => new HeaderEntry(line.Key, line.Value, index + 1))];
    }

    private static List<Clearance> Clearances() =>
    [
        new("head-to-wheel", "wheel-hub", 402, 2),
        new("chest-to-wheel", "wheel-hub", 331, 3),
        new("knee-to-panel-left", "knee-panel-outer", 146, 4),
        new("knee-to-panel-right", "knee-panel-inner", 152, 5),
        new("foot-to-footwell-left", "footwell-middle-centre", 118, 6),
    ];

    private static IEnumerable<Finding> Usual(Occupant occupant, OccupantMotion motion)
    {
        if (motion.HeadContactS is { } contact)
        {
            yield return new Finding(Math.Round(contact * 1000), "onboard-left", "head-strike", "head", FindingSeverity.Note,
                "Head meets the deployed airbag; no contact with anything hard seen.", occupant.Position, 0);
        }
    }
}
