using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Structure;

/// <summary>
/// Static measurements before and after → how far the structure moved. Axes and unit are turned into the vehicle frame, the frame
/// after the crash is fitted onto the frame before it on the reference points, and every measured point is compared:
/// rearward = −Δx, lateral = Δy, upward = −Δz. Methods edition 1, "Structure".
/// </summary>
public static class StructureReducer
{
    /// <param name="points">Rows of Static/points.csv.</param>
    /// <param name="clearances">Rows of Static/clearances.csv.</param>
    /// <param name="written">Unit and axes of both.</param>
    public static StructureReduction Reduce(
        ProcedureEdition procedure, StructureFrame written, IReadOnlyList<StructuralPoint> points, IReadOnlyList<Clearance> clearances)
    {
        var problems = new List<Problem>();
        var (frame, reason) = VehicleFrame.Of(written);
        var framed = frame is null ? [] : FramedPoint.Of(points, frame, problems);
        var references = points.Count == 0 ? null : ReferencePoints.Of(framed);
        var absent = reason ?? (references is null ? "no points were measured" : references.Absent);
        if (absent is not null)
        {
            problems.Add(new(ProblemSeverity.Warning, "structure.absent", $"The structure is not measured: {absent}.", "Static/points.csv"));
        }

        problems.AddRange(references is null || frame is null ? [] : references.Problems);
        var displaced = absent is null ? Displaced(references!.Fit!, framed) : [];
        var result = new StructureResult(
            absent is null ? Digits.Round12(references!.Fit!.Rms) : null, absent is null ? references!.Residuals : [], [.. displaced.Select(d => d.Point)], absent);
        var measures = new StructureMeasures(procedure, frame, framed, displaced, references?.Fit, absent);
        return new(result, [.. measures.All(Once(clearances, problems))], problems);
    }

    private static List<Displacement> Displaced(RigidFit fit, List<FramedPoint> points) =>
        [.. points.Where(p => p.Role == PointRole.Measured && p.Complete).Select(p => Displacement.Of(fit, p))];

    private static List<Clearance> Once(IReadOnlyList<Clearance> clearances, List<Problem> problems)
    {
        var kept = new List<Clearance>();
        foreach (var clearance in clearances)
        {
            if (kept.Exists(k => k.Name == clearance.Name))
            {
                problems.Add(new(
                    ProblemSeverity.Warning, "structure.clearance-twice", $"Clearance {clearance.Name} is given twice; the first row is used.",
                    "Static/clearances.csv", clearance.Line));
                continue;
            }

            kept.Add(clearance);
        }

        return kept;
    }
}
