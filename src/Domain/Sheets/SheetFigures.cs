using System.Globalization;
using Toepan.Domain.Measures;

namespace Toepan.Domain.Sheets;

/// <summary>Every figure a sheet of these facts may bind.</summary>
public static class SheetFigures
{
    /// <summary>The one denominator of a sheet.</summary>
    public const int Denominator = 100;

    private const double KilometresPerMile = 1.609344;
    private const double KilogramsPerPound = 0.45359237;
    private static readonly SheetShown[] Whole = [new("", 1, 0, null)];
    private static readonly SheetShown[] OfHundred = [new("", 1.0 / Denominator, 0, 1)];

    public static IReadOnlyList<SheetFigure> Of(SheetFacts facts, IReadOnlyList<SheetRegion> regions) =>
    [
        Constant("of", Denominator), .. Names(facts), .. Measures(facts), .. regions.SelectMany(region => Risks(region, facts)), .. Holds(facts), .. Conduct(facts),
    ];

    /// <summary>A whole number of the sheet's own.</summary>
    public static SheetFigure Count(string name, double value) => new() { Name = name, Kind = SheetFigureKind.Count, Value = value, Shown = Whole };

    private static SheetFigure Constant(string name, double value) => new() { Name = name, Kind = SheetFigureKind.Constant, Value = value, Shown = Whole };

    public static SheetFigure Name(string name, string text) => new() { Name = name, Kind = SheetFigureKind.Name, Text = text };

    private static SheetFigure Day(string name, DateOnly day) =>
        new() { Name = name, Kind = SheetFigureKind.Date, Text = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) };

    private static IEnumerable<SheetFigure> Names(SheetFacts facts)
    {
        var vehicle = facts.Vehicle;
        yield return Name("vehicle", vehicle.Name);
        yield return Name("class", vehicle.ClassTitle);
        yield return Name("test", facts.Test);
        yield return Day("date", facts.Method.Date);
        yield return Name("scheme", facts.Method.SchemeTitle);
        yield return Name("edition", facts.Method.MethodEdition);
        yield return Name("package", facts.Method.PackageSha256);
        yield return Count("runs", facts.Runs.Count);
        foreach (var twin in vehicle.Twins)
        {
            yield return Name($"twin.{twin.Key}", twin.Name);
        }

        foreach (var run in facts.Runs)
        {
            yield return Name($"run.{run.Test}", run.Test);
        }

        foreach (var (name, year) in new[] { ("years.from", vehicle.ModelYearFrom), ("years.to", vehicle.ModelYearTo) }.Where(pair => pair.Item2 is not null))
        {
            yield return Count(name, year!.Value);
        }

        foreach (var (name, day) in new[] { ("built.from", vehicle.BuiltFrom), ("built.to", vehicle.BuiltTo) }.Where(pair => pair.Item2 is not null))
        {
            yield return Day(name, day!.Value);
        }

        if (facts.Rating.Overall is { } level)
        {
            yield return Count("step", Ratings.LevelWords.Step(level));
            yield return Constant("steps", Ratings.LevelWords.Steps);
        }
    }

    private static IEnumerable<SheetFigure> Measures(SheetFacts facts) => facts.Measures
        .Where(measure => measure.Value is not null && (measure.Position == facts.Rating.Position || measure.Position is null)
            && !measure.Code.StartsWith("risk.", StringComparison.Ordinal))
        .Select(measure => new SheetFigure
        {
            Name = measure.Code, Kind = SheetFigureKind.Measure, Code = measure.Code, Position = measure.Position, Test = facts.Test,
            Value = measure.Value, Unit = measure.Unit, Shown = Ways(measure),
        });

    private static SheetShown[] Ways(Measure measure) => measure.Unit switch
    {
        "mm" when measure.Position is null => [new("cm", 10, 0, 1), new("in", 25.4, 1, null)],
        "mm" => [new("cm", 10, 1, null), new("in", 25.4, 1, null)],
        "km/h" => [new("km/h", 1, 1, null), new("mph", KilometresPerMile, 1, null)],
        "g" or "N·m" => [new(measure.Unit, 1, 0, null)],
        "kN" => [new("kN", 1, 1, null)],
        _ => [new(measure.Unit, 1, Math.Abs(measure.Value!.Value) >= 10 ? 0 : 2, null)],
    };

    private static IEnumerable<SheetFigure> Risks(SheetRegion region, SheetFacts facts)
    {
        var code = SheetRegions.Worse(region.Region, facts) is { } worse ? $"risk.{worse.Region}" : null;
        (string Name, SheetFigureKind Kind, double? Value)[] figures =
        [
            ($"risk.{region.Region}", SheetFigureKind.Risk, region.Risk), ($"risk.{region.Region}.from", SheetFigureKind.RiskRange, region.RiskFrom),
            ($"risk.{region.Region}.to", SheetFigureKind.RiskRange, region.RiskTo),
        ];
        return figures.Where(figure => figure.Value is not null).Select(figure => new SheetFigure
        {
            Name = figure.Name, Kind = figure.Kind, Code = code, Position = facts.Rating.Position, Test = facts.Test, Value = figure.Value, Shown = OfHundred,
        });
    }

    private static IEnumerable<SheetFigure> Holds(SheetFacts facts) => facts.Holds is not { } holds ? [] :
    [
        Chance("holds.low", Math.Min(holds.Independent, holds.Correlated), facts.Test), Chance("holds.high", Math.Max(holds.Independent, holds.Correlated), facts.Test),
    ];

    private static SheetFigure Chance(string name, double value, string test) =>
        new() { Name = name, Kind = SheetFigureKind.Chance, Code = "holds.overall", Test = test, Value = value, Shown = OfHundred };

    private static IEnumerable<SheetFigure> Conduct(SheetFacts facts)
    {
        (string Name, string Item, SheetShown[] Ways)[] figures =
        [
            ("speed", "impactSpeed", [new("km/h", 1, 1, null), new("mph", KilometresPerMile, 1, null)]),
            ("overlap", "overlap", [new("%", 1, 0, null)]),
            ("mass", "testMass", [new("kg", 1, 0, null), new("lb", KilogramsPerPound, 0, null)]),
        ];
        return
            from figure in figures
            let item = facts.Conduct.Items.FirstOrDefault(item => item.Item == figure.Item && item.Reading is not null)
            where item is not null
            select new SheetFigure
            {
                Name = figure.Name, Kind = SheetFigureKind.Conduct, Code = figure.Item, Test = facts.Test, Value = (double)item.Reading!.Value, Unit = item.Unit, Shown = figure.Ways,
            };
    }
}
