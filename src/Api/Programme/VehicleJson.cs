using Toepan.Domain.Ratings;

namespace Toepan.Api.Programme;

/// <summary>A vehicle in a list, as the contract writes it.</summary>
public sealed record VehicleJson(
    string Vehicle, string? Make, string? Model, string Class, int? ModelYearFrom, int? ModelYearTo, decimal? KerbMassKg, int Tests,
    ProtectionLevel? Overall, DateOnly? BuiltFrom, DateOnly? BuiltTo, string? RestraintEquipment, decimal? SalesSharePercent,
    DateOnly? PlannedDate, uint Version)
{
    public static VehicleJson Of(VehicleSummary vehicle) => new(
        vehicle.Name.Key, vehicle.Name.Make, vehicle.Name.Model, vehicle.Name.Class, vehicle.ModelYearFrom, vehicle.ModelYearTo,
        vehicle.KerbMassKg, vehicle.Tests, vehicle.Overall, vehicle.Facts.BuiltFrom, vehicle.Facts.BuiltTo, vehicle.Facts.RestraintEquipment,
        vehicle.Facts.SalesSharePercent, vehicle.Facts.PlannedDate, vehicle.Version);
}

/// <summary>A vehicle with its runs and twins.</summary>
public sealed record VehicleDetailJson(
    VehicleJson Vehicle, IReadOnlyList<TestRunJson> Runs, string? RatedBy, string? SharesRatingOf, IReadOnlyList<TwinJson> Twins,
    SharedRatingJson? Shared, CarryOverJson? CarryOver)
{
    public static VehicleDetailJson Of(VehicleDetail detail) => new(
        VehicleJson.Of(detail.Vehicle), [.. detail.Runs.Select(TestRunJson.Of)], detail.RatedBy, detail.SharesRatingOf?.Key,
        [.. detail.Twins.Select(TwinJson.Of)],
        detail.Shared is { } shared ? new(shared.From.Key, shared.Overall, shared.RatedBy, shared.Because, shared.Evidence) : null,
        detail.CarryOver is { } carried ? CarryOverJson.Of(carried) : null);
}

/// <summary>A rating from another vehicle, and why.</summary>
public sealed record SharedRatingJson(string From, ProtectionLevel? Overall, string? RatedBy, SharedBecause Because, string Evidence);

/// <summary>A decision to carry a rating over.</summary>
public sealed record CarryOverJson(string From, string Reason, string Evidence, string DecidedBy, DateTimeOffset DecidedAt)
{
    public static CarryOverJson Of(CarryOver carried) =>
        new(carried.From.Key, carried.Reason, carried.Evidence, carried.DecidedBy, carried.DecidedAt);
}

/// <summary>A vehicle of the same structure, with the evidence.</summary>
public sealed record TwinJson(string Vehicle, string? Make, string? Model, string Evidence, string AddedBy, DateTimeOffset AddedAt)
{
    public static TwinJson Of(Twin twin) => new(twin.Name.Key, twin.Name.Make, twin.Name.Model, twin.Evidence, twin.AddedBy, twin.AddedAt);
}
