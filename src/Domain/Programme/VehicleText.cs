using System.Globalization;

namespace Toepan.Domain.Programme;

/// <summary>
/// A vehicle's facts as the texts of forms and lists, by column name. Numbers and dates are invariant (1690.5, 2031-03-14); an empty text is
/// an absent value.
/// </summary>
public static class VehicleText
{
    /// <summary>Column that holds the vehicle's key.</summary>
    public const string Key = "vehicle";
    private const string Class = "class";
    private const string DateFormat = "yyyy-MM-dd";

    /// <summary>Columns of a vehicle list, in order.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        Key, "make", "model", Class, "modelYearFrom", "modelYearTo", "builtFrom", "builtTo", "kerbMassKg", "restraintEquipment", "salesSharePercent", "plannedDate",
    ];

    /// <summary>Every column but the key.</summary>
    public static IReadOnlyDictionary<string, string> Write(VehicleFacts facts) => new Dictionary<string, string>
    {
        ["make"] = facts.Make ?? "",
        ["model"] = facts.Model ?? "",
        [Class] = facts.Class,
        ["modelYearFrom"] = Write(facts.ModelYearFrom),
        ["modelYearTo"] = Write(facts.ModelYearTo),
        ["builtFrom"] = Write(facts.BuiltFrom),
        ["builtTo"] = Write(facts.BuiltTo),
        ["kerbMassKg"] = Write(facts.KerbMassKg),
        ["restraintEquipment"] = facts.RestraintEquipment ?? "",
        ["salesSharePercent"] = Write(facts.SalesSharePercent),
        ["plannedDate"] = Write(facts.PlannedDate),
    };

    /// <summary>The facts the texts say; what cannot be read is a fault and counts as absent. Columns left out are absent.</summary>
    public static (VehicleFacts Facts, IReadOnlyList<string> Faults) Read(IReadOnlyDictionary<string, string> texts)
    {
        var faults = new List<string>();
        var facts = new VehicleFacts
        {
            Class = Text("class") ?? "",
            Make = Text("make"),
            Model = Text("model"),
            ModelYearFrom = Year("modelYearFrom"),
            ModelYearTo = Year("modelYearTo"),
            BuiltFrom = Date("builtFrom"),
            BuiltTo = Date("builtTo"),
            KerbMassKg = Number("kerbMassKg"),
            RestraintEquipment = Text("restraintEquipment"),
            SalesSharePercent = Number("salesSharePercent"),
            PlannedDate = Date("plannedDate"),
        };
        return (facts, [.. faults, .. VehicleRules.Faults(facts)]);

        string? Text(string column) => texts.GetValueOrDefault(column)?.Trim() is { Length: > 0 } text ? text : null;

        int? Year(string column) => Parsed<int>(column, "a whole number", text =>
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var year) ? year : null);

        decimal? Number(string column) => Parsed<decimal>(column, "a number such as 1690.5", text =>
            decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : null);

        DateOnly? Date(string column) => Parsed<DateOnly>(column, "a date such as 2031-03-14", text =>
            DateOnly.TryParseExact(text, DateFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null);

        T? Parsed<T>(string column, string shape, Func<string, T?> read)
            where T : struct
        {
            var text = Text(column);
            var value = text is null ? null : read(text);
            if (text is not null && value is null)
            {
                faults.Add($"{column} is '{text}'; it is {shape}.");
            }

            return value;
        }
    }

    private static string Write(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";

    private static string Write(decimal? value) => value?.ToString("0.############", CultureInfo.InvariantCulture) ?? "";

    private static string Write(DateOnly? value) => value?.ToString(DateFormat, CultureInfo.InvariantCulture) ?? "";
}
