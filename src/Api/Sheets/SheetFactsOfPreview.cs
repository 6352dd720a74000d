using Toepan.Domain.Analysis.Holds;
using Toepan.Domain.Ratings;
using Toepan.Domain.Sheets;

namespace Toepan.Api.Sheets;

/// <summary>Stored facts of a preview → what the sheet is composed from.</summary>
internal static class SheetFactsOfPreview
{
    public static SheetFacts Facts(this SheetPreview preview, Scheme scheme, long ratingId, LevelModel model) => new()
    {
        Vehicle = Vehicle(preview),
        Runs = [.. preview.ValidRuns.Select(run => new SheetRun(run.Test, run.Date, run.Overall, run.Test == preview.RatedBy))],
        Test = preview.Run.Test,
        Method = Method(preview, scheme, ratingId),
        Rating = preview.Rating,
        Measures = preview.Measures,
        Structure = preview.Structure,
        Findings = preview.Findings,
        Conduct = preview.Conduct,
        Holds = LevelHolds.Of(scheme, model).Holds is { } chance ? new SheetHolds(chance.Independent, chance.Correlated) : null,
        Ranges = [.. RiskRange.Of(model).Where(range => range.Position == preview.Rating.Position).Select(range => new SheetRange(range.Region, range.From, range.To))],
    };

    private static SheetVehicle Vehicle(SheetPreview preview)
    {
        var (vehicle, facts) = (preview.Vehicle, preview.Vehicle.Facts);
        return new()
        {
            Key = vehicle.Name.Key, Make = vehicle.Name.Make, Model = vehicle.Name.Model, Name = vehicle.Name.Title, ClassKey = vehicle.Name.Class,
            ClassTitle = vehicle.ClassTitle, ModelYearFrom = vehicle.ModelYearFrom, ModelYearTo = vehicle.ModelYearTo, BuiltFrom = facts.BuiltFrom,
            BuiltTo = facts.BuiltTo, MassKg = (double?)vehicle.KerbMassKg,
            Twins = [.. preview.Twins.Select(twin => new SheetTwin(twin.Name.Key, twin.Name.Title, twin.Evidence))],
        };
    }

    private static SheetMethod Method(SheetPreview preview, Scheme scheme, long ratingId) => new()
    {
        Date = preview.Run.Date, Laboratory = preview.Run.Laboratory, Procedure = preview.Run.Procedure, Scheme = scheme.Key, SchemeTitle = scheme.Title,
        MethodEdition = preview.MethodEdition, PackageSha256 = preview.PackageSha256, ReductionId = preview.ReductionId, RatingId = ratingId,
        Dummy = preview.Run.Occupants.First(occupant => occupant.Position == preview.Rating.Position).Dummy.ToString(), Position = preview.Rating.Position,
    };
}
