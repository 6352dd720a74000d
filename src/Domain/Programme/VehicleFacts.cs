namespace Toepan.Domain.Programme;

/// <summary>What the programme keeps of a vehicle beside its key.</summary>
public sealed record VehicleFacts
{
    /// <summary>Class key.</summary>
    public required string Class { get; init; }
    public string? Make { get; init; }
    public string? Model { get; init; }
    public int? ModelYearFrom { get; init; }
    public int? ModelYearTo { get; init; }

    /// <summary>First build date the rating applies to.</summary>
    public DateOnly? BuiltFrom { get; init; }

    /// <summary>Last build date the rating applies to; null = still built.</summary>
    public DateOnly? BuiltTo { get; init; }
    public decimal? KerbMassKg { get; init; }

    /// <summary>Restraint equipment that comes with every vehicle of the model.</summary>
    public string? RestraintEquipment { get; init; }

    /// <summary>Share of the sales of its class, per cent.</summary>
    public decimal? SalesSharePercent { get; init; }

    /// <summary>When its first run is planned for.</summary>
    public DateOnly? PlannedDate { get; init; }
}

/// <summary>What a vehicle's facts must fulfil.</summary>
public static class VehicleRules
{
    public const int LongestName = 100;
    public const int LongestEquipment = 1_000;
    private const int EarliestYear = 1900;
    private const int LatestYear = 2200;
    private const decimal LeastKerbMassKg = 50;
    private const decimal GreatestKerbMassKg = 60_000;

    /// <summary>Every fault in a sentence; empty where there is none.</summary>
    public static IReadOnlyList<string> Faults(VehicleFacts facts) =>
    [
        .. Text("The make", facts.Make, LongestName),
        .. Text("The model", facts.Model, LongestName),
        .. Text("The restraint equipment", facts.RestraintEquipment, LongestEquipment),
        .. Year("modelYearFrom", facts.ModelYearFrom),
        .. Year("modelYearTo", facts.ModelYearTo),
        .. When(facts.ModelYearFrom > facts.ModelYearTo, "The model years are the wrong way round."),
        .. When(facts.BuiltFrom > facts.BuiltTo, "The build dates are the wrong way round."),
        .. When(facts.KerbMassKg is < LeastKerbMassKg or > GreatestKerbMassKg, $"The kerb mass is {facts.KerbMassKg} kg; it lies between {LeastKerbMassKg} and {GreatestKerbMassKg} kg."),
        .. When(facts.SalesSharePercent is < 0 or > 100, $"The sales share is {facts.SalesSharePercent} %; it lies between 0 and 100 %."),
    ];

    private static string[] Text(string what, string? text, int longest) => text switch
    {
        { } when text.Length > longest => [$"{what} has at most {longest} characters; this one has {text.Length}."],
        { } when text.Any(character => char.IsControl(character) && character is not ('\n' or '\r' or '\t')) => [$"{what} holds no control characters."],
        _ => [],
    };

    private static string[] Year(string name, int? year) =>
        When(year is < EarliestYear or > LatestYear, $"{name} is {year}; a year lies between {EarliestYear} and {LatestYear}.");

    private static string[] When(bool faulty, string fault) => faulty ? [fault] : [];
}
