using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Structure;

/// <summary>How far the structure moved, from points measured before and after and tied together by reference points; with the standard uncertainty that the alignment gives each figure.</summary>
/// <formula>The points after the crash are turned into the frame before it by the rigid motion (no scale, no reflection) that fits the reference points best in the sense of least squares; structure.alignment.rms = √(mean |r|²). Per point rearward = −Δx, lateral = Δy, upward = −Δz, x forward, y right, z down. structure.footwell.rearward: the largest over the footwell grid. structure.opening.closure: the largest loss of |Δx| between the front and rear points of a door-opening level. vehicle.crush.static: the largest rearward displacement of the exterior front points. clearance.&lt;name&gt;.residual = distance − rearward displacement of the opposing point; …residual.smaller = the same with the seat forward by the procedure's shift.</formula>
/// <window>None; the point is kept with the value.</window>
/// <edges>Fewer than three references, or references on a line (second singular value of the centred points under 1 % of the first): all are absent with the reason. A largest is taken over the points present. A negative clearance is contact without any motion of the dummy. The uncertainty is s·√(1/n + leverage), s from the residuals with 3n − 6 degrees of freedom.</edges>
/// <sources>Fit [arun1987], [umeyama1991], [kabsch1976]; what to measure and the seat's shift are common practice, no source.</sources>
/// <confidence>M for the citations; the loss that is minimised C1.</confidence>
/// <checks>The rigid-motion case of the check cases; rigid fits of scipy.</checks>
internal sealed class StructureMeasures(
    ProcedureEdition procedure, VehicleFrame? frame, IReadOnlyList<FramedPoint> points, IReadOnlyList<Displacement> displaced, RigidFit? fit, string? absent)
{
    private const string Unit = "mm";
    private const string FootwellPrefix = "footwell-";
    private const string ExteriorPrefix = "exterior-front-";
    private static readonly string[] Levels = ["upper", "lower"];
    private static readonly Coordinates Forward = new(1, 0, 0);
    private readonly Dictionary<string, Displacement> byName = displaced.ToDictionary(d => d.Name, StringComparer.Ordinal);

    public IEnumerable<Measure> All(IReadOnlyList<Clearance> clearances)
    {
        yield return absent is null
            ? new() { Code = "structure.alignment.rms", Unit = Unit, Value = Digits.Round12(fit!.Rms), Sources = References() }
            : Missing("structure.alignment.rms", absent);
        yield return Largest("structure.footwell.rearward", FootwellPrefix, "no footwell grid point has both positions");
        yield return Closure();
        yield return Largest("vehicle.crush.static", ExteriorPrefix, "no exterior front point has both positions");
        foreach (var measure in PointNames().SelectMany(OfPoint))
        {
            yield return measure;
        }

        foreach (var measure in clearances.SelectMany(OfClearance))
        {
            yield return measure;
        }
    }

    private IEnumerable<string> PointNames() =>
        procedure.Points.Concat(points.Where(p => p.Role == PointRole.Measured).Select(p => p.Name)).Distinct(StringComparer.Ordinal);

    private IEnumerable<Measure> OfPoint(string name)
    {
        string Code(string component) => $"structure.{name}.{component}";
        if (!byName.TryGetValue(name, out var found))
        {
            var reason = WhyNot(name);
            return [Missing(Code("rearward"), reason), Missing(Code("lateral"), reason), Missing(Code("upward"), reason), Missing(Code("resultant"), reason)];
        }

        var (point, u) = (found.Point, found.Point.Uncertainties!.Value);
        return
        [
            Present(Code("rearward"), point.Rearward, u.X, name), Present(Code("lateral"), point.Lateral, u.Y, name),
            Present(Code("upward"), point.Upward, u.Z, name), Present(Code("resultant"), point.Resultant, found.ResultantUncertainty, name),
        ];
    }

    private Measure Largest(string code, string prefix, string noneReason)
    {
        var largest = procedure.Points
            .Where(name => name.StartsWith(prefix, StringComparison.Ordinal) && byName.ContainsKey(name))
            .Select(name => byName[name].Point)
            .MaxBy(point => point.Rearward);
        return largest is null
            ? Missing(code, absent ?? noneReason)
            : Present(code, largest.Rearward, largest.Uncertainties!.Value.X, largest.Point) with { Detail = largest.Point };
    }

    private Measure Closure()
    {
        const string Code = "structure.opening.closure";
        var present = Levels
            .Where(level => byName.ContainsKey(Front(level)) && byName.ContainsKey(Rear(level)))
            .Select(level => (Level: level, Loss: Loss(byName[Front(level)], byName[Rear(level)])))
            .ToList();
        if (present.Count == 0)
        {
            return Missing(Code, absent ?? "no level of the door opening has both its points");
        }

        var (worst, loss) = present.MaxBy(p => p.Loss);
        var uncertainty = fit!.UncertaintyBetween(byName[Front(worst)].Aligned, byName[Rear(worst)].Aligned, Forward);
        return Present(Code, loss, uncertainty, Front(worst), Rear(worst)) with { Detail = worst };
    }

    private IEnumerable<Measure> OfClearance(Clearance clearance)
    {
        var code = $"clearance.{clearance.Name}.residual";
        if (!byName.TryGetValue(clearance.OpposingPoint, out var opposing))
        {
            var reason = absent ?? $"its opposing point {clearance.OpposingPoint}: {WhyNot(clearance.OpposingPoint)}";
            return [Missing(code, reason), Missing($"{code}.smaller", reason)];
        }

        if (!double.IsFinite(clearance.Distance))
        {
            return [Missing(code, "its distance is not a number"), Missing($"{code}.smaller", "its distance is not a number")];
        }

        var residual = (clearance.Distance * frame!.Scale) - opposing.Point.Rearward;
        var uncertainty = opposing.Point.Uncertainties!.Value.X;
        return
        [
            Present(code, residual, uncertainty, opposing.Name),
            Present($"{code}.smaller", residual - procedure.SmallerOccupantForwardShiftMm, uncertainty, opposing.Name),
        ];
    }

    private string WhyNot(string name) => absent ?? points.FirstOrDefault(p => p.Name == name) switch
    {
        null => "the point was not measured",
        { Role: PointRole.Reference } => "the point was used as a reference",
        { Before: null } => "its position before the crash is not recorded",
        _ => "its position after the crash is not recorded",
    };

    private string[] References() => [.. points.Where(p => p.Role == PointRole.Reference && p.Complete).Select(p => p.Name)];

    private static double Loss(Displacement front, Displacement rear) =>
        Math.Abs(front.Point.Before.X - rear.Point.Before.X) - Math.Abs(front.Aligned.X - rear.Aligned.X);

    private static string Front(string level) => $"door-opening-front-{level}";

    private static string Rear(string level) => $"door-opening-rear-{level}";

    private static Measure Missing(string code, string reason) => new() { Code = code, Unit = Unit, Absent = reason };

    private static Measure Present(string code, double value, double uncertainty, params string[] sources) =>
        new() { Code = code, Unit = Unit, Value = Digits.Round12(value), Uncertainty = Digits.Round12(uncertainty), Sources = sources };
}
