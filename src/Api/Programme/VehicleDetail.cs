using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Programme;

/// <summary>A vehicle in a list.</summary>
public sealed record VehicleSummary(
    VehicleName Name, string ClassTitle, int? ModelYearFrom, int? ModelYearTo, decimal? KerbMassKg, int Tests, ProtectionLevel? Overall)
{
    /// <summary>Everything that is kept of it.</summary>
    public required VehicleFacts Facts { get; init; }

    /// <summary>For the next change.</summary>
    public required uint Version { get; init; }
}

/// <summary>A vehicle with its runs, what rates it, and its twins.</summary>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="Runs">Its runs by test code.</param>
/// <param name="RatedBy">Test code of the valid run whose rating is the vehicle's: the lowest of its valid runs; null where none is rated.</param>
/// <param name="SharesRatingOf">The vehicle whose twin this is, where it has no valid run of its own; else null.</param>
/// <param name="Twins">Vehicles of the same structure.</param>
public sealed record VehicleDetail(
    VehicleSummary Vehicle, IReadOnlyList<TestRunSummary> Runs, string? RatedBy, VehicleName? SharesRatingOf, IReadOnlyList<Twin> Twins)
{
    /// <summary>The decision by which it carries the rating of an earlier vehicle, or null.</summary>
    public CarryOver? CarryOver { get; init; }

    /// <summary>The rating it has from another vehicle, or null. It stands where no run of its own rates it.</summary>
    public SharedRating? Shared { get; init; }
}

/// <summary>Why a vehicle has another's rating.</summary>
public enum SharedBecause
{
    /// <summary>The structure is the same, by an evidence document.</summary>
    SameStructure,

    /// <summary>A recorded decision carries it over.</summary>
    CarriedOver,
}

/// <summary>A rating a vehicle has from another one.</summary>
/// <param name="From">The vehicle that was tested.</param>
/// <param name="Overall">Its level; null where it is not rated.</param>
/// <param name="RatedBy">The run that rates it.</param>
/// <param name="Because">Why it is shared.</param>
/// <param name="Evidence">What shows it.</param>
public sealed record SharedRating(VehicleName From, ProtectionLevel? Overall, string? RatedBy, SharedBecause Because, string Evidence);

/// <summary>A vehicle of the same structure, and how we know.</summary>
/// <param name="Name">The twin.</param>
/// <param name="Evidence">Document that proves it.</param>
/// <param name="AddedBy">Who recorded it.</param>
/// <param name="AddedAt">When.</param>
public sealed record Twin(VehicleName Name, string Evidence, string AddedBy, DateTimeOffset AddedAt);

/// <summary>A twin to record; an unknown vehicle is created in the same class.</summary>
public sealed record NewTwin(string Key, string? Make, string? Model, int? ModelYearFrom, int? ModelYearTo, string Evidence);
