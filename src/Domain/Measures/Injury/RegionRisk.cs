using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Injury;

/// <summary>The probability of an injury of a region by its published curve: serious or worse (AIS 3+) for head, neck and chest, moderate or worse (AIS 2+) for a thigh.</summary>
/// <formula>risk.head = Φ((ln HIC15 − 7.45231)/0.73998), 0 at HIC15 = 0. risk.neck = the largest of 1/(1 + exp(3.2269 − 1.9688·Nij)) and, of tension and of compression F in kN, 1/(1 + exp(10.9745 − 2.375·F)) (HF: 10.958 and 3.770). risk.chest = 1/(1 + exp(10.5456 − 1.568·D^0.4612)) of the deflection D in mm (HF: 1.7212). risk.thigh = 1/(1 + exp(5.7949 − 0.5196·F)) of the femur compression F in kN (HF: 0.7619).</formula>
/// <window>That of the load that drives the risk; its name is kept with the value.</window>
/// <edges>The load is the measure as stored, rounded to 12 digits. Absent where one of the region's loads is absent; then, and where a load is only known from below, the risk lies between that of what is known and 1. The neck curve gives 3.8 % at no load at all, the others 0 (head) to 0.3 % (thigh).</edges>
/// <sources>[73fr40016]; the neck curve's over-prediction [sae2010-22-0004].</sources>
/// <confidence>C2 for H3, M for HF; the largest of the neck's three: M.</confidence>
/// <checks>The risk table of the check cases; scipy's norm.cdf and expit.</checks>
public static class RegionRisk
{
    /// <summary>Head, neck, chest and both thighs, from the measures of one occupant.</summary>
    internal static IEnumerable<Measure> Reduce(Occupant occupant, IReadOnlyDictionary<string, Measure> measures)
    {
        yield return Of("risk.head", [Input(RiskFunctions.Head, "head.hic15")]);
        yield return Of(
            "risk.neck",
            [Input(RiskFunctions.NeckNij, "neck.nij"), Input(RiskFunctions.NeckForce, "neck.tension"), Input(RiskFunctions.NeckForce, "neck.compression")]);
        yield return Of("risk.chest", [Input(RiskFunctions.Chest, "chest.deflection")]);
        foreach (var side in Side.Both)
        {
            yield return Of($"risk.thigh.{side.Word}", [Input(RiskFunctions.Thigh, $"femur.{side.Word}.compression")]);
        }

        RiskInput Input(string function, string code) => new(code, RiskFunctions.Get(function, occupant.Dummy), measures[code]);
    }

    /// <summary>The largest of a region's risks; absent where one of its loads is.</summary>
    internal static Measure Of(string code, IReadOnlyList<RiskInput> inputs)
    {
        var driver = inputs.MaxBy(input => input.Risk ?? -1)!;
        var risk = new Measure
        {
            Code = code,
            Unit = MeasureCatalogue.Get(code).Unit,
            Position = driver.Load.Position,
            Sources = inputs.SelectMany(input => input.Load.Sources).Distinct().ToList(),
            Bias = inputs.SelectMany(input => input.Load.Bias).Distinct().ToList(),
            Bounds = Bound(inputs),
        };
        var absent = inputs.Where(input => input.Risk is null).Select(input => $"{input.Name}: {input.Load.Absent}").Distinct().ToList();
        return absent.Count > 0
            ? risk with { Absent = string.Join("; ", absent) }
            : risk with
            {
                Value = driver.Risk,
                FromS = driver.Load.FromS,
                ToS = driver.Load.ToS,
                FilterClass = driver.Load.FilterClass,
                Detail = driver.Name,
            };
    }

    private static MeasureBounds? Bound(IReadOnlyList<RiskInput> inputs)
    {
        var open = inputs.Where(input => input.Risk is null || input.Load.Bounds is not null).ToList();
        return open.Count == 0
            ? null
            : new(inputs.Max(input => input.AtLeast), 1, string.Join("; ", open.Select(Because).Distinct()));
    }

    private static string Because(RiskInput input) => input.Load.Bounds is { AtLeast: not null } bounds
        ? $"{input.Name} is known from below only: {bounds.Because}"
        : $"nothing is known of {input.Name}";
}
