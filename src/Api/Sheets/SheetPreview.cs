using Toepan.Api.Programme;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Sheets;

/// <summary>All a sheet is made from, bound to one reduction and one rating, so that it cannot drift from the data.</summary>
/// <param name="Run">The run.</param>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="Twins">Vehicles that share the rating.</param>
/// <param name="Rating">The rating shown.</param>
/// <param name="Measures">Measures behind it.</param>
/// <param name="Structure">Structure behind it.</param>
/// <param name="Findings">Findings behind it.</param>
/// <param name="Conduct">Conduct verdicts.</param>
/// <param name="MethodEdition">Method edition of the figures.</param>
/// <param name="ReductionId">Reduction the figures come from.</param>
/// <param name="PackageSha256">Package they come from.</param>
/// <param name="PreparedAt">When the preview was drawn.</param>
public sealed record SheetPreview(
    TestRunSummary Run, VehicleSummary Vehicle, IReadOnlyList<Twin> Twins, Rating Rating, IReadOnlyList<Measure> Measures,
    StructureResult Structure, IReadOnlyList<Finding> Findings, ConductJudgement Conduct, string MethodEdition, long ReductionId,
    string PackageSha256, DateTimeOffset PreparedAt)
{
    /// <summary>Every valid run of the vehicle, by date.</summary>
    public IReadOnlyList<TestRunSummary> ValidRuns { get; init; } = [];

    /// <summary>The run that rates the vehicle, or null.</summary>
    public string? RatedBy { get; init; }
}
