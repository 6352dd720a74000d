using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>Where a risk would lie in nine of ten repeated runs.</summary>
/// <param name="Region">Region of the rating, with its side.</param>
public sealed record SheetRange(string Region, double From, double To);

/// <summary>The stored facts a consumer sheet is composed from. Nothing on a sheet comes from anywhere else.</summary>
public sealed record SheetFacts
{
    public required SheetVehicle Vehicle { get; init; }

    /// <summary>Every valid run of the vehicle, by date.</summary>
    public required IReadOnlyList<SheetRun> Runs { get; init; }

    /// <summary>The run the figures come from.</summary>
    public required string Test { get; init; }
    public required SheetMethod Method { get; init; }
    public required Rating Rating { get; init; }
    public required IReadOnlyList<Measure> Measures { get; init; }
    public required StructureResult Structure { get; init; }
    public required IReadOnlyList<Finding> Findings { get; init; }
    public required ConductJudgement Conduct { get; init; }

    /// <summary>Chance that the overall level holds; null where not known.</summary>
    public required SheetHolds? Holds { get; init; }

    /// <summary>Repeat ranges of the rated occupant's regions that are rated on a risk.</summary>
    public required IReadOnlyList<SheetRange> Ranges { get; init; }

    /// <summary>Texts that editors put in place of the standard ones.</summary>
    public IReadOnlyList<SheetWording> Wordings { get; init; } = [];

    /// <summary>A measure of the rated occupant or of the vehicle; null where absent.</summary>
    public Measure? Measure(string code) =>
        Measures.FirstOrDefault(m => m.Code == code && m.Value is not null && (m.Position == Rating.Position || m.Position is null));

    /// <summary>Both sides (or the one) of a region of the rated occupant.</summary>
    public IReadOnlyList<RegionRating> Sides(string region) =>
        [.. Rating.Regions.Where(rated => rated.Position == Rating.Position && rated.Region.Split('.')[0] == region)];
}
