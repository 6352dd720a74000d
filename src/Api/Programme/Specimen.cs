using Toepan.Api.Programme.Tables;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>What is kept of a specimen.</summary>
/// <param name="Test">Code of the run it is for, or null.</param>
/// <param name="Serial">Serial; kept masked, whatever is given.</param>
/// <param name="BuiltOn">Build date.</param>
/// <param name="MassKg">Mass as delivered, kg.</param>
/// <param name="OdometerKm">Odometer on arrival, km.</param>
/// <param name="Options">Options and equipment it was bought with.</param>
/// <param name="PurchasedOn">When it was bought.</param>
/// <param name="PurchasedFrom">From whom.</param>
/// <param name="PurchaseReference">Number of the purchase document.</param>
/// <param name="ReceivedOn">When it came to the laboratory; null = not yet.</param>
public sealed record SpecimenFacts(
    string? Test, string? Serial, DateOnly? BuiltOn, decimal? MassKg, decimal? OdometerKm, string? Options, DateOnly? PurchasedOn,
    string? PurchasedFrom, string? PurchaseReference, DateOnly? ReceivedOn)
{
    public const int LongestName = 200;
    public const int LongestOptions = 2_000;

    /// <summary>What speaks against the facts, or null.</summary>
    internal Failure? Check() =>
        Optional("The serial", Serial, LongestName) ?? Optional("The options text", Options, LongestOptions)
        ?? Optional("The seller", PurchasedFrom, LongestName) ?? Optional("The purchase reference", PurchaseReference, LongestName)
        ?? (this switch
        {
            { MassKg: < 0 or > 60_000 } => Failure.BadRequest($"The mass is {MassKg} kg; it lies between 0 and 60000 kg."),
            { OdometerKm: < 0 or > 2_000_000 } => Failure.BadRequest($"The odometer reads {OdometerKm} km; it lies between 0 and 2000000 km."),
            _ when ReceivedOn < PurchasedOn => Failure.BadRequest("It was received before it was bought."),
            _ when PurchasedOn < BuiltOn => Failure.BadRequest("It was bought before it was built."),
            _ => null,
        });

    private static Failure? Optional(string what, string? text, int longest) => string.IsNullOrEmpty(text) ? null : Texts.Check(what, text, longest);
}

/// <summary>A specimen with what identifies it.</summary>
public sealed record Specimen(long Id, VehicleName Vehicle, SpecimenFacts Facts, uint Version)
{
    internal static Specimen Of(SpecimenRow row, VehicleName vehicle) => new(row.Id, vehicle, FactsOf(row), row.Version);

    internal static SpecimenFacts FactsOf(SpecimenRow row) => new(
        row.Test, row.MaskedSerial, row.BuiltOn, row.MassKg, row.OdometerKm, row.Options, row.PurchasedOn, row.PurchasedFrom,
        row.PurchaseReference, row.ReceivedOn);

    internal static void Take(SpecimenRow row, SpecimenFacts facts)
    {
        row.Test = Text(facts.Test);
        row.MaskedSerial = SerialMask.Of(facts.Serial);
        (row.BuiltOn, row.MassKg, row.OdometerKm, row.Options) = (facts.BuiltOn, facts.MassKg, facts.OdometerKm, Text(facts.Options));
        (row.PurchasedOn, row.PurchasedFrom, row.PurchaseReference) = (facts.PurchasedOn, Text(facts.PurchasedFrom), Text(facts.PurchaseReference));
        row.ReceivedOn = facts.ReceivedOn;
    }

    private static string? Text(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
