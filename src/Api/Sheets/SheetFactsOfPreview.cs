using Toepan.Domain.Sheets;

namespace Toepan.Api.Sheets;

/// <summary>Stored facts of a preview → what the sheet is composed from.</summary>
public static class SheetFactsOfPreview
{
    public static SheetFacts Facts(this SheetPreview preview) => new()
    {
        Vehicle = preview.Vehicle.Name.Title,
        ModelYearFrom = preview.Vehicle.ModelYearFrom,
        ModelYearTo = preview.Vehicle.ModelYearTo,
        ClassTitle = preview.Vehicle.ClassTitle.ToLowerInvariant(),
        Twins = [.. preview.Twins.Select(twin => twin.Name.Title)],
        Test = preview.Run.Test,
        Date = preview.Run.Date,
        Rating = preview.Rating,
        Measures = preview.Measures,
        Findings = preview.Findings,
        Occupants = preview.Run.Occupants,
        Conduct = preview.Conduct,
        TestMassKg = preview.Conduct.Items.FirstOrDefault(item => item.Item == "testMass")?.Reading,
        MethodEdition = preview.MethodEdition,
        PackageSha256 = preview.PackageSha256,
    };
}
