using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Tests.Ratings;

/// <summary>
/// A second opinion on the rules, written from the text of the scheme and of methods edition 1 with every figure typed in again; no
/// scheme file, no explanation, no margins. Levels are 0 high … 3 very low, null not rated.
/// </summary>
internal sealed class SlowRater(RatingInputs inputs)
{
    public Dictionary<(int Position, string Region), int?> Regions { get; } = [];

    public int? Structure { get; private set; }

    public int? Overall()
    {
        var driver = inputs.Occupants.Where(o => o.Seat == "driver").OrderBy(o => o.Position).FirstOrDefault() ?? inputs.Occupants.OrderBy(o => o.Position).First();
        var excess = new Dictionary<(int, string), double>();
        foreach (var o in inputs.Occupants)
        {
            Occupant(o, driver, excess);
        }

        Structure = StructureLevel();
        string[] all = ["head", "neck", "chest", "thigh.left", "thigh.right", "lowerleg.left", "lowerleg.right"];
        if (Structure is null || all.Any(r => Regions[(driver.Position, r)] is null))
        {
            return null;
        }

        double E(string region) => excess[(driver.Position, region)];
        int L(string region) => Regions[(driver.Position, region)]!.Value;
        var life = Step(1 - ((1 - E("head")) * (1 - E("neck")) * (1 - E("chest"))), 0.10, 0.30, 0.60);
        var legs = driver.Dummy == DummyType.HF
            ? all.Skip(3).Max(L)
            : Step(1 - ((1 - Math.Max(E("thigh.left"), E("thigh.right"))) * (1 - Math.Max(E("lowerleg.left"), E("lowerleg.right")))), 0.10, 0.25, 0.55);
        var worst = all.Max(L);
        var overall = Math.Max(life, legs);
        overall = Math.Min(overall, worst);
        overall = Math.Max(overall, worst - 1);
        overall = Structure switch { 3 => Math.Max(overall, 2), 2 => Math.Max(overall, 1), _ => overall };
        bool Seen(string kind, FindingSeverity from) => inputs.Findings.Any(f => f.Kind == kind && f.Severity >= from);
        if (Seen("door-opened", FindingSeverity.Concern) || Seen("seat-anchorage-failed", FindingSeverity.Concern) || Seen("belt-failure", FindingSeverity.Concern)
            || Seen("fuel-leak", FindingSeverity.Severe) || Seen("isolation-lost", FindingSeverity.Severe) || Seen("electrolyte-leak", FindingSeverity.Severe))
        {
            overall = Math.Max(overall, 2);
        }

        return Seen("fire", FindingSeverity.Severe) || Seen("thermal-event", FindingSeverity.Severe) ? 3 : overall;
    }

    private void Occupant(Occupant o, Occupant driver, Dictionary<(int, string), double> excess)
    {
        var small = o.Dummy == DummyType.HF;
        double? V(string code) => inputs.Measures.FirstOrDefault(m => m.Code == code && m.Position == o.Position)?.Value;
        bool Over(string code, double limit) => V(code) > limit;
        bool Seen(string kind, FindingSeverity from, string? region = null) =>
            inputs.Findings.Any(f => f.Kind == kind && f.Severity >= from && (f.Position ?? driver.Position) == o.Position && (region is null || f.Region == region));
        void Put(string region, double? e, bool over, bool cappedLow)
        {
            if (e is { } value)
            {
                excess[(o.Position, region)] = value;
            }

            int? level = e is null ? null : Step(e.Value, 0.05, 0.15, 0.35);
            Regions[(o.Position, region)] = over || cappedLow ? Worse(level, 2) : level;
        }

        Put("head", Excess(V("head.hic15") is { } hic ? Phi((Math.Log(hic) - 7.45231) / 0.73998) : null, 0),
            Over("head.hic15", 700) || Over("head.a3ms", 80), Seen("head-strike", FindingSeverity.Severe) || Seen("airbag-missed", FindingSeverity.Concern));
        double? Force(string code) => V(code) is { } f ? (small ? Logistic(10.958 - (3.770 * f)) : Logistic(10.9745 - (2.375 * f))) : null;
        var neck = Largest(V("neck.nij") is { } nij ? Logistic(3.2269 - (1.9688 * nij)) : null, Force("neck.tension"), Force("neck.compression"));
        Put("neck", Excess(neck, 0.03816588), Over("neck.nij", 1) || Over("neck.tension", small ? 2.62 : 4.17) || Over("neck.compression", small ? 2.52 : 4.0),
            Seen("wheel-contact", FindingSeverity.Severe));
        double? Chest(double? mm) => mm is { } d ? Logistic(10.5456 - ((small ? 1.7212 : 1.568) * Math.Pow(d, 0.4612))) : null;
        Put("chest", Excess(Chest(V("chest.deflection")), Chest(0)!.Value),
            Over("chest.deflection", small ? 52 : 63) || Over("chest.a3ms", 60) || Over("chest.viscous", 1), false);
        foreach (var side in new[] { "left", "right" })
        {
            double? Thigh(double? kn) => kn is { } f ? Logistic(5.7949 - ((small ? 0.7619 : 0.5196) * f)) : null;
            Put($"thigh.{side}", Excess(Thigh(V($"femur.{side}.compression")), Thigh(0)!.Value),
                Over($"femur.{side}.compression", small ? 6.805 : 10.008) || Over($"knee.{side}.slide", 15), false);
            LowerLeg(o, side, V, Seen, excess);
        }
    }

    private void LowerLeg(Occupant o, string side, Func<string, double?> value, Func<string, FindingSeverity, string?, bool> seen, Dictionary<(int, string), double> excess)
    {
        double?[] indices = [value($"tibia.{side}.upper.index"), value($"tibia.{side}.lower.index")];
        var (index, force) = (indices.Max(), value($"tibia.{side}.compression"));
        int? level = null;
        if (index is { } i && force is { } f && o.Dummy == DummyType.HF)
        {
            level = Math.Max(Step(i, 0.67, 0.90, 1.14), Step(f, 1.5, 2.7, 3.8));
        }
        else if (index is not null && force is not null && value($"risk.lowerleg.{side}") is { } p)
        {
            excess[(o.Position, $"lowerleg.{side}")] = Excess(p, Logistic(4.572))!.Value;
            level = Step(excess[(o.Position, $"lowerleg.{side}")], 0.05, 0.15, 0.35);
        }

        level = index > 1.3 || (o.Dummy == DummyType.H3 && force > 8) ? Worse(level, 2) : level;
        var trapped = seen("occupant-trapped", FindingSeverity.Concern, $"lower-leg-{side}") || seen("dummy-damaged", FindingSeverity.Severe, $"lower-leg-{side}");
        Regions[(o.Position, $"lowerleg.{side}")] = trapped ? Worse(level, 3) : level;
    }

    private int? StructureLevel()
    {
        double? V(string code) => inputs.Measures.FirstOrDefault(m => m.Code == code)?.Value;
        if (V("structure.footwell.rearward") is not { } footwell || V("structure.wheel-hub.rearward") is not { } back || V("structure.wheel-hub.upward") is not { } up)
        {
            return null;
        }

        int?[] levels =
        [
            Step(footwell, 80, 160, 240), Step(back, 33, 67, 100), Step(up, 27, 53, 80),
            V("structure.knee-panel-outer.rearward") is { } outer ? Step(outer, 40, 80, 120) : null,
            V("structure.knee-panel-inner.rearward") is { } inner ? Step(inner, 40, 80, 120) : null,
            V("structure.opening.closure") is { } closure ? Step(closure, 25, 60, 110) : null,
        ];
        return levels.Max();
    }

    private static int? Worse(int? level, int floor) => level is null ? null : Math.Max(level.Value, floor);

    private static int Step(double value, double high, double moderate, double low) => (value > high ? 1 : 0) + (value > moderate ? 1 : 0) + (value > low ? 1 : 0);

    private static double? Excess(double? p, double zero) => p is null ? null : Math.Max(0, (p.Value - zero) / (1 - zero));

    private static double? Largest(double? a, double? b, double? c) => a is null || b is null || c is null ? null : Math.Max(a.Value, Math.Max(b.Value, c.Value));

    private static double Logistic(double x) => 1 / (1 + Math.Exp(x));

    /// <summary>Standard normal distribution by Simpson's rule from −12: slow, obvious, good to 1e-12.</summary>
    private static double Phi(double z)
    {
        const int Steps = 4000;
        if (z <= -12)
        {
            return 0;
        }

        var h = (z + 12) / Steps;
        var sum = 0.0;
        for (var i = 0; i <= Steps; i++)
        {
            var x = -12 + (i * h);
            sum += Math.Exp(-x * x / 2) * (i is 0 or Steps ? 1 : i % 2 == 1 ? 4 : 2);
        }

        return sum * h / 3 / Math.Sqrt(2 * Math.PI);
    }
}
