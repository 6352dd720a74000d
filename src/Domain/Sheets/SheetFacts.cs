using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>The stored facts a consumer sheet is composed from. Nothing on a sheet comes from anywhere else.</summary>
public sealed record SheetFacts
{
    /// <summary>Make and model.</summary>
    public required string Vehicle { get; init; }
    public required int? ModelYearFrom { get; init; }
    public required int? ModelYearTo { get; init; }

    /// <summary>Plural title of the class, e.g. "light delivery vans".</summary>
    public required string ClassTitle { get; init; }

    /// <summary>Vehicles of the same structure, which share the rating.</summary>
    public required IReadOnlyList<string> Twins { get; init; }
    public required string Test { get; init; }
    public required DateOnly Date { get; init; }
    public required Rating Rating { get; init; }
    public required IReadOnlyList<Measure> Measures { get; init; }
    public required IReadOnlyList<Finding> Findings { get; init; }
    public required IReadOnlyList<Occupant> Occupants { get; init; }
    public required ConductJudgement Conduct { get; init; }
    public required decimal? TestMassKg { get; init; }
    public required string MethodEdition { get; init; }
    public required string PackageSha256 { get; init; }

    /// <summary>The occupant whose protection the overall level states.</summary>
    public Occupant Rated => Occupants.First(occupant => occupant.Position == Rating.Position);

    /// <summary>A measure of the rated occupant or of the vehicle, or null where absent.</summary>
    public double? Value(string code) =>
        Measures.FirstOrDefault(m => m.Code == code && (m.Position == Rating.Position || m.Position is null))?.Value;
}
