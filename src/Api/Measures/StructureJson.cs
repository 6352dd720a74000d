using Toepan.Domain.Measures;
using Toepan.Domain.Packages;

namespace Toepan.Api.Measures;

/// <summary>Alignment and displacements as the contract writes them; mm, vehicle frame.</summary>
/// <param name="Alignment">The rigid fit.</param>
/// <param name="Points">Displacements.</param>
/// <param name="Absent">Why there are none, or null.</param>
public sealed record StructureJson(AlignmentJson Alignment, IReadOnlyList<DisplacementJson> Points, string? Absent)
{
    public static StructureJson Of(StructureResult structure) => new(
        new AlignmentJson(structure.RmsMm, [.. structure.References.Select(ReferenceJson.Of)]),
        [.. structure.Points.Select(DisplacementJson.Of)],
        structure.Absent);
}

/// <summary>The rigid fit of after to before on the reference points.</summary>
public sealed record AlignmentJson(double? RmsMm, IReadOnlyList<ReferenceJson> References);

/// <summary>One reference point: residual in mm, and whether it seems to have moved.</summary>
public sealed record ReferenceJson(string Point, double ResidualMm, bool Moved, Coordinates Before)
{
    public static ReferenceJson Of(ReferenceResidual reference) =>
        new(reference.Point, reference.ResidualMm, reference.Moved, reference.Before);
}

/// <summary>One point's displacement with its standard uncertainty, mm.</summary>
public sealed record DisplacementJson(
    string Point, double Rearward, double Lateral, double Upward, double Resultant, double? Uncertainty, Coordinates Before, Coordinates After)
{
    public static DisplacementJson Of(PointDisplacement point) => new(
        point.Point, point.Rearward, point.Lateral, point.Upward, point.Resultant, point.Uncertainty, point.Before, point.After);
}
