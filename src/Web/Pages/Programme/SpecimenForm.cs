using System.Globalization;
using Toepan.Api.Programme;

namespace Toepan.Web.Pages.Programme;

/// <summary>Specimen ↔ the texts of its form.</summary>
public static class SpecimenForm
{
    public static IReadOnlyDictionary<string, string> Write(SpecimenFacts facts) => new Dictionary<string, string>
    {
        ["test"] = facts.Test ?? "",
        ["serial"] = facts.Serial ?? "",
        ["builtOn"] = Day(facts.BuiltOn),
        ["massKg"] = Number(facts.MassKg),
        ["odometerKm"] = Number(facts.OdometerKm),
        ["options"] = facts.Options ?? "",
        ["purchasedOn"] = Day(facts.PurchasedOn),
        ["purchasedFrom"] = facts.PurchasedFrom ?? "",
        ["purchaseReference"] = facts.PurchaseReference ?? "",
        ["receivedOn"] = Day(facts.ReceivedOn),
    };

    /// <summary>The facts, and what could not be read in sentences.</summary>
    public static (SpecimenFacts Facts, IReadOnlyList<string> Faults) Read(Func<string, string> sent)
    {
        var faults = new List<string>();
        var facts = new SpecimenFacts(
            Text("test"), Text("serial"), Date("builtOn"), Decimal("massKg"), Decimal("odometerKm"), Text("options"), Date("purchasedOn"),
            Text("purchasedFrom"), Text("purchaseReference"), Date("receivedOn"));
        return (facts, faults);

        string? Text(string name) => sent(name) is { Length: > 0 } text ? text : null;

        DateOnly? Date(string name) => Parsed<DateOnly>(name, "a date such as 2031-03-14", text =>
            DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null);

        decimal? Decimal(string name) => Parsed<decimal>(name, "a number such as 1690.5", text =>
            decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null);

        T? Parsed<T>(string name, string shape, Func<string, T?> read)
            where T : struct
        {
            var value = Text(name) is { } text ? read(text) : null;
            if (value is null && Text(name) is { } wrong)
            {
                faults.Add($"{name} is '{wrong}'; it is {shape}.");
            }

            return value;
        }
    }

    private static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    private static string Number(decimal? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";
}
