using Toepan.Api.Measures;
using Toepan.Api.Programme;
using Toepan.Api.Ratings;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Api.Sheets;

/// <summary>A sheet preview as the contract writes it.</summary>
public sealed record SheetJson(
    TestRunJson Run, VehicleJson Vehicle, IReadOnlyList<TwinJson> Twins, RatingJson Rating, IReadOnlyList<MeasureJson> Measures,
    StructureJson Structure, IReadOnlyList<Finding> Findings, IReadOnlyList<ConductVerdict> Conduct, string MethodEdition, long Reduction,
    string PackageSha256, DateTimeOffset PreparedAt)
{
    public static SheetJson Of(SheetPreview sheet) => new(
        TestRunJson.Of(sheet.Run), VehicleJson.Of(sheet.Vehicle), [.. sheet.Twins.Select(TwinJson.Of)], RatingJson.Of(sheet.Rating),
        [.. sheet.Measures.Select(MeasureJson.Of)], StructureJson.Of(sheet.Structure), sheet.Findings, sheet.Conduct.Items,
        sheet.MethodEdition, sheet.ReductionId, sheet.PackageSha256, sheet.PreparedAt);
}
