using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Injury;

/// <summary>The probability of at least one of the regions' injuries, the regions taken as independent.</summary>
/// <formula>risk.joint = 1 − Π(1 − p) over head, neck, chest, the worse thigh and the worse lower leg.</formula>
/// <window>None.</window>
/// <edges>Absent where a region's risk is; then, and where a risk is only known from below, it lies between the joint risk of the lower bounds and that of the upper ones. For the small-woman dummy no lower-leg risk is published here: the lower leg is left out, and that is said.</edges>
/// <sources>[73fr40016], there over head, neck, chest and femur; the lower leg is added by methods edition 1.</sources>
/// <confidence>C2; with the lower leg common practice, no source.</confidence>
/// <checks>The joint case of the check cases.</checks>
public static class JointRisk
{
    private const string Code = "risk.joint";

    private static readonly string[] Single = ["risk.head", "risk.neck", "risk.chest"];
    private static readonly string[] Paired = ["risk.thigh", "risk.lowerleg"];

    internal static Measure Reduce(Occupant occupant, IReadOnlyDictionary<string, Measure> risks)
    {
        var withLegs = occupant.Dummy == DummyType.H3;
        var regions = Single.Select(code => (IReadOnlyList<Measure>)[risks[code]])
            .Concat(Paired.Take(withLegs ? 2 : 1).Select(code => (IReadOnlyList<Measure>)Side.Both.Select(side => risks[$"{code}.{side.Word}"]).ToList()))
            .ToList();
        var all = regions.SelectMany(region => region).ToList();
        var absent = all.Where(risk => risk.Absent is not null).Select(risk => $"{risk.Code} is absent").ToList();
        return new()
        {
            Code = Code,
            Unit = MeasureCatalogue.Get(Code).Unit,
            Position = occupant.Position,
            Sources = all.SelectMany(risk => risk.Sources).Distinct().ToList(),
            Bias = all.SelectMany(risk => risk.Bias).Distinct().ToList(),
            Value = absent.Count > 0 ? null : Join(regions, risk => risk.Value!.Value),
            Absent = absent.Count > 0 ? string.Join("; ", absent) : null,
            Detail = withLegs ? null : "without the lower leg, for which no risk is published here",
            Bounds = all.All(risk => risk is { Absent: null, Bounds: null }) ? null : Bound(regions, all),
        };
    }

    private static MeasureBounds Bound(IReadOnlyList<IReadOnlyList<Measure>> regions, List<Measure> all) => new(
        Join(regions, risk => risk.Bounds is { } bounds ? bounds.AtLeast ?? 0 : risk.Value ?? 0),
        Join(regions, risk => risk.Bounds is { } bounds ? bounds.AtMost ?? 1 : risk.Value ?? 1),
        string.Join("; ", all.Select(risk => risk.Bounds?.Because).OfType<string>().Distinct()));

    private static double Join(IReadOnlyList<IReadOnlyList<Measure>> regions, Func<Measure, double> risk)
    {
        var none = 1.0;
        foreach (var region in regions)
        {
            none *= 1 - region.Max(risk);
        }

        return Digits.Round12(1 - none);
    }
}
