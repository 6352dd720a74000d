using System.Globalization;
using Toepan.Domain.Analysis.Historic;
using Toepan.Domain.Measures;

namespace Toepan.Demo.Results;

/// <summary>
/// Seeded summary results of an invented past: each vehicle has a latent quality that shifts all its measures, so that measures correlate and later model years come out
/// better. Written a row at a time; the same seed gives the same file.
/// </summary>
public sealed class SummaryGenerator(int count, int seed)
{
    private const int TestsAVehicle = 4;
    private const int FirstYear = 2004;
    private const int Years = 24;
    private const double QualityShare = 0.7;
    private static readonly string[] Makes = ["Tarnbrook", "Velsey", "Quillon", "Dunmere", "Askervold"];
    private static readonly (string Class, double MassKg)[] Classes = [("delivery-van", 1700), ("compact-electric", 1500), ("crew-cab-pickup", 2150)];

    private static readonly string[] Points =
    [
        "pedal-brake.rearward", "pedal-brake.upward", "pedal-brake.lateral", "wheel-hub.rearward", "wheel-hub.upward", "wheel-hub.lateral", "knee-panel-outer.rearward",
        "knee-panel-inner.rearward", "windscreen-base.rearward", "footwell-upper-outer.rearward", "footwell-upper-centre.rearward", "footwell-upper-inner.rearward",
        "footwell-middle-outer.rearward", "footwell-middle-centre.rearward", "footwell-middle-inner.rearward", "footwell-lower-outer.rearward",
    ];

    /// <summary>The measure columns: sixty codes.</summary>
    public static IReadOnlyList<string> Codes { get; } =
    [
        .. MeasureCatalogue.Entries.Select(entry => entry.Code).Where(code => !code.Contains('<', StringComparison.Ordinal)),
        .. Points.Select(point => $"structure.{point}"),
    ];

    public void Write(TextWriter file)
    {
        file.Write(string.Join(',', HistoricColumns.Fixed.Concat(Codes)) + "\n");
        var random = new Random(seed);
        var (quality, vehicle) = (0.0, default(Vehicle));
        for (var i = 0; i < count; i++)
        {
            if (i % TestsAVehicle == 0)
            {
                vehicle = Vehicle.Draw(random, i / TestsAVehicle);
                quality = Normal(random) - (0.06 * (vehicle.Year - FirstYear - (Years / 2)));
            }

            file.Write(Row(random, i, vehicle, quality));
        }
    }

    private static string Row(Random random, int i, Vehicle vehicle, double quality)
    {
        var mass = vehicle.MassKg + (20 * Normal(random));
        string[] cells =
        [
            $"HX-{i + 100_000}", vehicle.Key, vehicle.Make, vehicle.Model, vehicle.Class, Text(vehicle.Year), "offset-frontal-64",
            $"{vehicle.Year}-{Text((i % 12) + 1, "00")}-{Text((i % 28) + 1, "00")}", "1", i % 5 == 0 ? "HF" : "H3", mass.ToString("F1", CultureInfo.InvariantCulture),
            .. Codes.Select(code => Value(random, code, quality)),
        ];
        return string.Join(',', cells) + "\n";
    }

    private static string Value(Random random, string code, double quality)
    {
        var (middle, spread) = Scale(code);
        var drawn = middle + (spread * ((QualityShare * quality) + (Math.Sqrt(1 - (QualityShare * QualityShare)) * Normal(random))));
        var value = code.StartsWith("risk.", StringComparison.Ordinal) ? Math.Clamp(drawn, 0, 1) : HistoricColumns.MayBeNegative(code) ? drawn : Math.Abs(drawn);
        return value.ToString("G9", CultureInfo.InvariantCulture);
    }

    /// <summary>Where values of a code lie, roughly. Our own, no source.</summary>
    private static (double Middle, double Spread) Scale(string code) => (code.Split('.')[0], MeasureCatalogue.Get(code).Unit) switch
    {
        (_, "probability") => (0.08, 0.03),
        ("conduct", "") => (1, 0.02),
        ("conduct", _) => (64.4, 0.3),
        ("vehicle", "mm") => (900, 120),
        ("vehicle", "km/h") => (72, 3),
        ("structure", _) => (60, 45),
        ("head", "") => (450, 160),
        (_, "g") => (50, 12),
        (_, "kN") => (3, 0.9),
        (_, "N·m") => (60, 20),
        (_, "mm") => (30, 8),
        (_, "m/s") => (0.4, 0.15),
        _ => (0.6, 0.18),
    };

    // Box and Muller's first half; the second is thrown away to keep one draw one value.
    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static string Text(int value, string format = "0") => value.ToString(format, CultureInfo.InvariantCulture);

    private readonly record struct Vehicle(string Key, string Make, string Model, string Class, int Year, double MassKg)
    {
        public static Vehicle Draw(Random random, int number)
        {
            var (vehicleClass, mass) = Classes[number % Classes.Length];
            var make = Makes[random.Next(Makes.Length)];
            return new($"past-{number:D5}", make, $"Past {number:D5}", vehicleClass, FirstYear + random.Next(Years), mass + (90 * Normal(random)));
        }
    }
}
