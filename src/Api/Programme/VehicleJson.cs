using Toepan.Domain.Ratings;

namespace Toepan.Api.Programme;

/// <summary>A vehicle in a list, as the contract writes it.</summary>
public sealed record VehicleJson(
    string Vehicle, string? Make, string? Model, string Class, int? ModelYearFrom, int? ModelYearTo, decimal? KerbMassKg, int Tests,
    ProtectionLevel? Overall)
{
    public static VehicleJson Of(VehicleSummary vehicle) => new(
        vehicle.Name.Key, vehicle.Name.Make, vehicle.Name.Model, vehicle.Name.Class, vehicle.ModelYearFrom, vehicle.ModelYearTo,
        vehicle.KerbMassKg, vehicle.Tests, vehicle.Overall);
}

/// <summary>A vehicle with its runs and twins.</summary>
public sealed record VehicleDetailJson(
    VehicleJson Vehicle, IReadOnlyList<TestRunJson> Runs, string? RatedBy, string? SharesRatingOf, IReadOnlyList<TwinJson> Twins)
{
    public static VehicleDetailJson Of(VehicleDetail detail) => new(
        VehicleJson.Of(detail.Vehicle), [.. detail.Runs.Select(TestRunJson.Of)], detail.RatedBy, detail.SharesRatingOf?.Key,
        [.. detail.Twins.Select(TwinJson.Of)]);
}

/// <summary>A vehicle of the same structure, with the evidence.</summary>
public sealed record TwinJson(string Vehicle, string? Make, string? Model, string Evidence, string AddedBy, DateTimeOffset AddedAt)
{
    public static TwinJson Of(Twin twin) => new(twin.Name.Key, twin.Name.Make, twin.Name.Model, twin.Evidence, twin.AddedBy, twin.AddedAt);
}
