using System.Globalization;
using Toepan.Domain.Packages;

namespace Toepan.Domain.Measures.Structure;

/// <summary>
/// Ties the frame after the crash to the frame before it on the reference points: fit, residuals, and a reference that seems to
/// have moved. A moved reference is named and stays in the fit. Methods edition 1, "Structure".
/// </summary>
internal sealed class ReferencePoints
{
    /// <summary>Fewer references than this are a problem, though they may suffice for a fit; common practice, from memory.</summary>
    public const int Advised = 5;

    /// <summary>Alignment rms above this is a problem, mm; common practice, from memory.</summary>
    public const double RmsConcernMm = 5;

    /// <summary>A reference has moved where its residual exceeds this many times the rms of a fit without it …</summary>
    public const double MovedFactor = 3;

    /// <summary>… and this, mm. Both common practice, no source.</summary>
    public const double MovedMm = 3;

    private const string File = "Static/points.csv";

    private ReferencePoints(RigidFit? fit, IReadOnlyList<ReferenceResidual> residuals, string? absent, IReadOnlyList<Problem> problems)
    {
        Fit = fit;
        Residuals = residuals;
        Absent = absent;
        Problems = problems;
    }

    /// <summary>Post → pre, mm, vehicle frame; null where <see cref="Absent"/> says why.</summary>
    public RigidFit? Fit { get; }

    public IReadOnlyList<ReferenceResidual> Residuals { get; }

    public string? Absent { get; }

    public IReadOnlyList<Problem> Problems { get; }

    public static ReferencePoints Of(IReadOnlyList<FramedPoint> points)
    {
        var references = points.Where(p => p.Role == PointRole.Reference).ToList();
        var problems = references.Where(p => !p.Complete).Select(Blank).ToList();
        var used = references.Where(p => p.Complete).ToList();
        Coordinates[] before = [.. used.Select(p => p.Before!.Value)], after = [.. used.Select(p => p.After!.Value)];
        if (Unusable(before, after) is { } absent)
        {
            return new(null, [], absent, problems);
        }

        var fit = RigidFit.Of(after, before);
        var residuals = used
            .Select((p, i) => new ReferenceResidual(p.Name, before[i], Digits.Round12(fit.Residuals[i]), HasMoved(before, after, fit, i)))
            .ToList();
        problems.AddRange(Doubts(fit, residuals));
        return new(fit, residuals, null, problems);
    }

    private static string? Unusable(Coordinates[] before, Coordinates[] after) => before switch
    {
        { Length: < RigidFit.MinimumPoints } =>
            $"{before.Length} reference points have both positions and an alignment needs {RigidFit.MinimumPoints}",
        _ when RigidFit.AreCollinear(before) || RigidFit.AreCollinear(after) => "the reference points lie on one line, so no alignment is defined",
        _ => null,
    };

    private static bool HasMoved(Coordinates[] before, Coordinates[] after, RigidFit fit, int index)
    {
        if (fit.Residuals[index] <= MovedMm)
        {
            return false;
        }

        Coordinates[] otherBefore = [.. before.Where((_, i) => i != index)], otherAfter = [.. after.Where((_, i) => i != index)];
        return Unusable(otherBefore, otherAfter) is null
            && fit.Residuals[index] > MovedFactor * RigidFit.Of(otherAfter, otherBefore).Rms;
    }

    private static IEnumerable<Problem> Doubts(RigidFit fit, List<ReferenceResidual> residuals)
    {
        if (residuals.Count < Advised)
        {
            yield return new(
                ProblemSeverity.Warning, "structure.few-references",
                $"The frames are aligned on {residuals.Count} reference points; at least {Advised} are advised.", File,
                Value: Text(residuals.Count), Limit: Text(Advised));
        }

        if (Digits.Round12(fit.Rms) > RmsConcernMm)
        {
            yield return new(
                ProblemSeverity.Warning, "structure.alignment",
                $"The reference points fit to {Text(fit.Rms)} mm rms, more than {Text(RmsConcernMm)} mm: displacements are in doubt.", File,
                Value: Text(fit.Rms), Limit: Text(RmsConcernMm));
        }

        foreach (var moved in residuals.Where(r => r.Moved))
        {
            yield return new(
                ProblemSeverity.Warning, "structure.reference-moved",
                $"Reference point {moved.Point} is {Text(moved.ResidualMm)} mm from where the others put it: it seems to have moved.", File,
                Value: Text(moved.ResidualMm), Limit: Text(MovedMm));
        }
    }

    private static Problem Blank(FramedPoint point) => new(
        ProblemSeverity.Warning, "structure.reference-blank",
        $"Reference point {point.Name} lacks a coordinate and is left out of the alignment.", File, point.Line);

    private static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
