using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Packages.Manifest;

/// <summary>
/// programme.json → <see cref="ProgrammeDocument"/>, every problem with its line. Agrees with programme.schema.json. The bounds of numbers are
/// our own, no source: beyond them a figure is a slip of the pen.
/// </summary>
internal sealed partial class ManifestReader(KnownProgramme known, ProblemList problems)
{
    private const int LongestName = 200;
    private const int LongestKey = 100;
    private const int LongestTest = 11;
    private const int MostReadings = 100;

    private readonly Dictionary<string, JsonElement> unknown = [];

    /// <summary>The document, or null where the package is refused for it.</summary>
    public ProgrammeDocument? Read(ReadOnlyMemory<byte> bytes, string file)
    {
        var json = bytes.Span.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
        if (JsonLines.Index(json, file, problems) is not { } lines)
        {
            return null;
        }

        using var document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = JsonLines.MaxDepth * 2 });
        if (document.RootElement.ValueKind != JsonValueKind.Object)
        {
            problems.Reject(ProblemCodes.WrongType, $"{file} must hold one object.", new Place(file, 1), null, "an object");
            return null;
        }

        return Programme(new JsonView(document.RootElement, JsonPaths.Root, lines, problems));
    }

    private ProgrammeDocument? Programme(JsonView root)
    {
        var test = TestCode(root, "test", required: true);
        var procedure = Known(root, "procedure", known.Procedures, ProblemCodes.UnknownProcedure);
        var date = Date(root);
        var laboratory = root.Text("laboratory", LongestName);
        var repeatOf = TestCode(root, "repeatOf", required: false);
        if (test is not null && repeatOf == test)
        {
            problems.Reject(ProblemCodes.BadValue, "A run cannot be a repeat of itself.", root.PlaceOf("repeatOf"), repeatOf);
        }

        var vehicle = Vehicle(root.Object("vehicle", required: true));
        var conduct = Conduct(root.Object("conduct", required: true));
        var occupants = new OccupantsReader(problems, unknown).Read(root);
        var structure = new StructureReader(problems, unknown).Read(root.Object("structure"));
        root.KeepUnknown(unknown);
        if (problems.Rejected || test is null || procedure is null || date is null || vehicle is null || conduct is null || occupants is null || structure is null)
        {
            return null;
        }

        return new ProgrammeDocument
        {
            Test = test, Procedure = procedure, Date = date.Value, Laboratory = laboratory, RepeatOf = repeatOf, Vehicle = vehicle,
            Conduct = conduct, Occupants = occupants, Structure = structure, Unknown = unknown,
        };
    }

    private PackageVehicle? Vehicle(JsonView? vehicle)
    {
        if (vehicle is null)
        {
            return null;
        }

        var key = vehicle.Text("key", LongestKey, required: true);
        if (key is not null && !Key().IsMatch(key))
        {
            problems.Reject(ProblemCodes.BadValue, "$.vehicle.key must be letters, digits, points, hyphens and underscores, and begin with a letter or digit.", vehicle.PlaceOf("key"), key);
        }

        var (make, model) = (vehicle.Text("make", LongestName), vehicle.Text("model", LongestName));
        var years = vehicle.Numbers("modelYears", 1900, 2200, (2, 2));
        if (years is not null && (years.Any(year => year != decimal.Truncate(year)) || years[0] > years[1]))
        {
            problems.Reject(ProblemCodes.OutOfRange, "$.vehicle.modelYears must be two whole numbers, the first not above the second.", vehicle.PlaceOf("modelYears"), string.Join(", ", years.Select(Text)));
            years = null;
        }

        var vehicleClass = Known(vehicle, "class", known.Classes, ProblemCodes.UnknownClass);
        var mass = vehicle.Number("kerbMassKg", 1, 100_000);
        vehicle.KeepUnknown(unknown);
        return key is null || vehicleClass is null ? null : new PackageVehicle(key, make, model, (int?)years?[0], (int?)years?[1], vehicleClass, mass);
    }

    private ConductReadings? Conduct(JsonView? conduct)
    {
        if (conduct is null)
        {
            return null;
        }

        var speeds = conduct.Numbers("impactSpeedKmh", 0.1m, 300, (1, MostReadings), required: true);
        var readings = new ConductReadings
        {
            ImpactSpeedKmh = speeds ?? [],
            OverlapPercent = conduct.Number("overlapPercent", 0, 100),
            TestMassKg = conduct.Number("testMassKg", 1, 100_000),
            DeclaredTestMassKg = conduct.Number("declaredTestMassKg", 1, 100_000),
            DummyTemperatureC = conduct.Numbers("dummyTemperatureC", -60, 100, (0, MostReadings)) ?? [],
            ImpactAngleDeg = conduct.Number("impactAngleDeg", -180, 180),
            VerticalAlignmentMm = conduct.Number("verticalAlignmentMm", -5_000, 5_000),
        };
        conduct.KeepUnknown(unknown);
        return speeds is null ? null : readings;
    }

    private string? TestCode(JsonView root, string name, bool required)
    {
        var code = root.Text(name, LongestTest * 10, required);
        if (code is null || TestPattern().IsMatch(code))
        {
            return code;
        }

        problems.Reject(ProblemCodes.BadValue, $"$.{name} is '{ProblemList.Show(code)}'; a test code has 2 to 4 capital letters, a hyphen and 3 to 6 digits.", root.PlaceOf(name), code, "[A-Z]{2,4}-[0-9]{3,6}");
        return null;
    }

    private string? Known(JsonView view, string name, IReadOnlySet<string> keys, string code)
    {
        var key = view.Text(name, LongestKey, required: true);
        if (key is null || keys.Contains(key))
        {
            return key;
        }

        problems.Reject(code, $"The {name} '{ProblemList.Show(key)}' is not one of the programme's.", view.PlaceOf(name), key, string.Join(", ", keys.Order(StringComparer.Ordinal)));
        return null;
    }

    private DateOnly? Date(JsonView root)
    {
        var text = root.Text("date", LongestName, required: true);
        if (text is null)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            return date;
        }

        problems.Reject(ProblemCodes.BadValue, $"$.date is '{ProblemList.Show(text)}'; a day is written YYYY-MM-DD.", root.PlaceOf("date"), text, "YYYY-MM-DD");
        return null;
    }

    private static string Text(decimal number) => number.ToString(CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^[A-Z]{2,4}-[0-9]{3,6}\z", RegexOptions.CultureInvariant)]
    private static partial Regex TestPattern();

    [GeneratedRegex(@"^[A-Za-z0-9][A-Za-z0-9._-]*\z", RegexOptions.CultureInvariant)]
    private static partial Regex Key();
}
