using Toepan.Domain.Ratings;

namespace Toepan.Api.Programme;

/// <summary>A vehicle in a list.</summary>
public sealed record VehicleSummary(
    VehicleName Name, string ClassTitle, int? ModelYearFrom, int? ModelYearTo, decimal? KerbMassKg, int Tests, ProtectionLevel? Overall);

/// <summary>A vehicle with its runs, what rates it, and its twins.</summary>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="Runs">Its runs by test code.</param>
/// <param name="RatedBy">Test code of the valid run whose rating is the vehicle's: the lowest of its valid runs; null where none is rated.</param>
/// <param name="SharesRatingOf">The vehicle whose twin this is, where it has no valid run of its own; else null.</param>
/// <param name="Twins">Vehicles of the same structure.</param>
public sealed record VehicleDetail(
    VehicleSummary Vehicle, IReadOnlyList<TestRunSummary> Runs, string? RatedBy, VehicleName? SharesRatingOf, IReadOnlyList<Twin> Twins);

/// <summary>A vehicle of the same structure, and how we know.</summary>
/// <param name="Name">The twin.</param>
/// <param name="Evidence">Document that proves it.</param>
/// <param name="AddedBy">Who recorded it.</param>
/// <param name="AddedAt">When.</param>
public sealed record Twin(VehicleName Name, string Evidence, string AddedBy, DateTimeOffset AddedAt);

/// <summary>A twin to record; an unknown vehicle is created in the same class.</summary>
public sealed record NewTwin(string Key, string? Make, string? Model, int? ModelYearFrom, int? ModelYearTo, string Evidence);
