namespace Toepan.Web.Pages.Programme;

/// <summary>Columns of a vehicle as forms name them.</summary>
public static class VehicleFields
{
    public sealed record Field(string Name, string Label, string Type = "text", bool Decimal = false, int Lines = 1, string? Hint = null);

    /// <summary>Fields after key and class, in the order of the form.</summary>
    public static IReadOnlyList<Field> All { get; } =
    [
        new("make", "Make"),
        new("model", "Model"),
        new("modelYearFrom", "Model year from", Decimal: true),
        new("modelYearTo", "Model year to", Decimal: true),
        new("builtFrom", "Built from", "date", Hint: "First build date the rating applies to."),
        new("builtTo", "Built to", "date", Hint: "Empty while it is still built."),
        new("kerbMassKg", "Kerb mass, kg", Decimal: true),
        new("restraintEquipment", "Restraint equipment", Lines: 3, Hint: "What every vehicle of the model comes with."),
        new("salesSharePercent", "Share of the sales of its class, %", Decimal: true, Hint: "Weighs the coverage of the class. Empty where it is not known."),
        new("plannedDate", "Planned for", "date", Hint: "When its first run is planned, until a run has a code."),
    ];

    /// <summary>"Kerb mass, kg"; a column without a field keeps its name.</summary>
    public static string Label(string column) => column switch
    {
        "class" => "Class",
        "vehicle" => "Key",
        _ => All.FirstOrDefault(field => field.Name == column)?.Label ?? column,
    };
}
