using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Tests.Ratings;

/// <summary>Seeded runs of every severity: values log-uniform around their bounds, findings, one or two occupants, some measures missing.</summary>
internal static class RandomRuns
{
    private static readonly (string Code, double From, double To)[] Ranges =
    [
        ("head.hic15", 50, 2500), ("head.a3ms", 30, 110), ("neck.nij", 0.05, 2), ("neck.tension", 0.2, 6), ("neck.compression", 0.1, 6),
        ("chest.deflection", 5, 90), ("chest.a3ms", 25, 75), ("chest.viscous", 0.05, 1.6), ("femur.left.compression", 0.3, 16),
        ("femur.right.compression", 0.3, 16), ("knee.left.slide", 1, 22), ("knee.right.slide", 1, 22), ("tibia.left.upper.index", 0.1, 2),
        ("tibia.left.lower.index", 0.1, 2), ("tibia.right.upper.index", 0.1, 2), ("tibia.right.lower.index", 0.1, 2),
        ("tibia.left.compression", 0.3, 10), ("tibia.right.compression", 0.3, 10), ("risk.lowerleg.left", 0.0105, 0.9), ("risk.lowerleg.right", 0.0105, 0.9),
    ];

    private static readonly (string Code, double From, double To)[] Structure =
    [
        ("structure.footwell.rearward", 10, 350), ("structure.wheel-hub.rearward", 2, 160), ("structure.wheel-hub.upward", 2, 120),
        ("structure.knee-panel-outer.rearward", 3, 180), ("structure.knee-panel-inner.rearward", 3, 180), ("structure.opening.closure", 2, 160),
    ];

    private static readonly string[] Kinds =
    [
        "door-opened", "head-strike", "wheel-contact", "occupant-trapped", "dummy-damaged", "seat-anchorage-failed", "belt-failure", "airbag-missed",
        "fuel-leak", "isolation-lost", "electrolyte-leak", "fire", "thermal-event", "floor-buckled", "something-else",
    ];

    private static readonly string[] FindingRegions = ["head", "neck", "lower-leg-left", "lower-leg-right", "thigh-left", "vehicle"];

    /// <param name="missing">Chance that a measure is absent.</param>
    /// <param name="findings">Chance of each further finding.</param>
    public static RatingCase Draw(Random random, double missing, double findings)
    {
        var run = new RatingCase();
        var harm = random.NextDouble();
        var seats = random.Next(4) switch { 0 => new[] { "driver", "passenger" }, 1 => ["passenger"], _ => ["driver"] };
        var positions = random.Next(2) == 0 ? new[] { 1, 3 } : [3, 1];
        for (var i = 0; i < seats.Length; i++)
        {
            var dummy = random.Next(3) == 0 ? DummyType.HF : DummyType.H3;
            run.Occupant(positions[i], seats[i], dummy);
            foreach (var (code, from, to) in Ranges.Where(r => dummy == DummyType.H3 || !r.Code.StartsWith("risk.", StringComparison.Ordinal)))
            {
                Put(run, random, code, from, to, harm, missing, positions[i]);
            }
        }

        foreach (var (code, from, to) in Structure)
        {
            Put(run, random, code, from, to, harm, missing, null);
        }

        while (random.NextDouble() < findings)
        {
            int? position = random.Next(3) == 0 ? random.Next(1, 4) : null;
            run.Found(Kinds[random.Next(Kinds.Length)], (FindingSeverity)random.Next(3), FindingRegions[random.Next(FindingRegions.Length)], position);
        }

        return run;
    }

    private static void Put(RatingCase run, Random random, string code, double from, double to, double harm, double missing, int? position)
    {
        var share = random.NextDouble() * (0.25 + (0.75 * harm));
        if (random.NextDouble() < missing)
        {
            run.Absent(code, position);
        }
        else
        {
            run.Set(code, from * Math.Pow(to / from, share), position);
        }
    }
}
