using Toepan.Domain.Packages;

namespace Toepan.Domain.Measures.Structure;

/// <summary>What the static measurements came to.</summary>
/// <param name="Result">The fit, its residuals and every displaced point, for tables and pictures.</param>
/// <param name="Measures">structure.*, clearance.* and vehicle.crush.static, present or absent with a reason.</param>
/// <param name="Problems">What somebody should look at.</param>
public sealed record StructureReduction(StructureResult Result, IReadOnlyList<Measure> Measures, IReadOnlyList<Problem> Problems);
