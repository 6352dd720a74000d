using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Tests.Ratings;

/// <summary>Rating inputs by hand: figures by measure code for each seat, a vehicle, findings. Starts from a run in which everything is high.</summary>
internal sealed class RatingCase
{
    private readonly Dictionary<(string Code, int? Position), Measure> measures = [];
    private readonly List<Occupant> occupants = [];
    private readonly List<Finding> findings = [];

    public static readonly Scheme Scheme = SchemeLibrary.Default;

    public static RatingCase Benign(DummyType dummy = DummyType.H3) => new RatingCase().Structure().Occupant(1, "driver", dummy);

    public RatingCase Occupant(int position, string seat, DummyType dummy)
    {
        occupants.Add(new(position, seat, dummy));
        foreach (var (code, value) in new (string, double)[]
        {
            ("head.hic15", 150), ("head.a3ms", 40), ("neck.nij", 0.15), ("neck.tension", 0.6), ("neck.compression", 0.2), ("chest.deflection", 12),
            ("chest.a3ms", 30), ("chest.viscous", 0.1), ("femur.left.compression", 1), ("femur.right.compression", 1.2), ("knee.left.slide", 2), ("knee.right.slide", 3),
            ("tibia.left.upper.index", 0.3), ("tibia.left.lower.index", 0.2), ("tibia.right.upper.index", 0.25), ("tibia.right.lower.index", 0.3),
            ("tibia.left.compression", 0.8), ("tibia.right.compression", 0.9),
        })
        {
            Set(code, value, position);
        }

        if (dummy == DummyType.H3)
        {
            Set("risk.lowerleg.left", 0.03, position);
            Set("risk.lowerleg.right", 0.03, position);
        }

        return this;
    }

    public RatingCase Structure()
    {
        foreach (var (code, value) in new (string, double)[]
        {
            ("structure.footwell.rearward", 30), ("structure.wheel-hub.rearward", 8), ("structure.wheel-hub.upward", 5),
            ("structure.knee-panel-outer.rearward", 12), ("structure.knee-panel-inner.rearward", 10), ("structure.opening.closure", 6),
        })
        {
            Set(code, value, null);
        }

        return this;
    }

    public RatingCase Set(string code, double value, int? position = 1, MeasureBounds? bounds = null, string? detail = null)
    {
        measures[(code, Seat(code, position))] = new()
        {
            Code = code, Position = Seat(code, position), Unit = UnitOf(code), Value = value, Bounds = bounds, Detail = detail,
        };
        return this;
    }

    public RatingCase Absent(string code, int? position = 1, MeasureBounds? bounds = null)
    {
        measures[(code, Seat(code, position))] = new() { Code = code, Position = Seat(code, position), Unit = UnitOf(code), Absent = "channel unfit", Bounds = bounds };
        return this;
    }

    public RatingCase Found(string kind, FindingSeverity severity, string region = "vehicle", int? position = null)
    {
        findings.Add(new(null, null, kind, region, severity, "", position, findings.Count + 2));
        return this;
    }

    public RatingInputs Inputs(bool valid = true) => new(valid, occupants, [.. measures.Values], findings);

    public Rating Rate(bool valid = true) => Rater.Rate(Scheme, Inputs(valid));

    private static int? Seat(string code, int? position) => code.StartsWith("structure.", StringComparison.Ordinal) ? null : position;

    private static string UnitOf(string code) => code switch
    {
        _ when code.StartsWith("risk.", StringComparison.Ordinal) => "probability",
        _ when code.EndsWith("compression", StringComparison.Ordinal) || code.EndsWith("tension", StringComparison.Ordinal) => "kN",
        _ when code.EndsWith("a3ms", StringComparison.Ordinal) => "g",
        _ when code.EndsWith("viscous", StringComparison.Ordinal) => "m/s",
        _ when code.StartsWith("structure.", StringComparison.Ordinal) || code.EndsWith("slide", StringComparison.Ordinal) || code.EndsWith("deflection", StringComparison.Ordinal) => "mm",
        _ => "",
    };
}
