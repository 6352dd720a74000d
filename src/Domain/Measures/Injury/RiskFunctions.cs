using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Injury;

/// <summary>
/// Every risk function of edition 1, by name and dummy. Coefficients: [73fr40016] for head, neck, chest and thigh (existence read,
/// coefficients from a secondary source for the average-man dummy and from memory for the small-woman one); [kuppa2001] for the
/// lower leg, average man only.
/// </summary>
public static class RiskFunctions
{
    public const string Head = "head.hic15";
    public const string NeckNij = "neck.nij";

    /// <summary>One curve for neck tension and for neck compression.</summary>
    public const string NeckForce = "neck.force";
    public const string Chest = "chest.deflection";
    public const string Thigh = "thigh.force";
    public const string Shaft = "lowerleg.shaft";
    public const string Ankle = "lowerleg.ankle";
    public const string Plateau = "lowerleg.plateau";

    /// <summary>Body mass in the plateau curve, kg [kuppa2001].</summary>
    public const double PlateauBodyMassKg = 75;

    private const string Notice = "73fr40016";
    private const string Kuppa = "kuppa2001";

    public static IReadOnlyList<RiskFunction> All { get; } =
    [
        new(Head, DummyType.H3, 3, "HIC15", "", "Φ((ln HIC15 − 7.45231)/0.73998), 0 at HIC15 = 0", new LogNormalCurve(7.45231, 0.73998), Notice, "C2"),
        new(Head, DummyType.HF, 3, "HIC15", "", "Φ((ln HIC15 − 7.45231)/0.73998), 0 at HIC15 = 0", new LogNormalCurve(7.45231, 0.73998), Notice, "M"),
        new(NeckNij, DummyType.H3, 3, "Nij", "", "1/(1 + exp(3.2269 − 1.9688·Nij))", new LogisticCurve(3.2269, 1.9688), Notice, "C2"),
        new(NeckNij, DummyType.HF, 3, "Nij", "", "1/(1 + exp(3.2269 − 1.9688·Nij))", new LogisticCurve(3.2269, 1.9688), Notice, "M"),
        new(NeckForce, DummyType.H3, 3, "neck tension or compression", "kN", "1/(1 + exp(10.9745 − 2.375·F))", new LogisticCurve(10.9745, 2.375), Notice, "C2"),
        new(NeckForce, DummyType.HF, 3, "neck tension or compression", "kN", "1/(1 + exp(10.958 − 3.770·F))", new LogisticCurve(10.958, 3.770), Notice, "M"),
        new(Chest, DummyType.H3, 3, "chest deflection", "mm", "1/(1 + exp(10.5456 − 1.568·D^0.4612))", new LogisticCurve(10.5456, 1.568, 0.4612), Notice, "C2"),
        new(Chest, DummyType.HF, 3, "chest deflection", "mm", "1/(1 + exp(10.5456 − 1.7212·D^0.4612))", new LogisticCurve(10.5456, 1.7212, 0.4612), Notice, "M"),
        new(Thigh, DummyType.H3, 2, "femur compression", "kN", "1/(1 + exp(5.7949 − 0.5196·F))", new LogisticCurve(5.7949, 0.5196), Notice, "C2"),
        new(Thigh, DummyType.HF, 2, "femur compression", "kN", "1/(1 + exp(5.7949 − 0.7619·F))", new LogisticCurve(5.7949, 0.7619), Notice, "M"),
        new(Shaft, DummyType.H3, 2, "revised tibia index", "", "1 − exp(−exp((ln RTI − 0.2728)/0.2468))", new WeibullCurve(0.2728, 0.2468), Kuppa, "C2, Weibull form M"),
        new(Ankle, DummyType.H3, 2, "lower tibia compression", "kN", "1/(1 + exp(4.572 − 0.670·F))", new LogisticCurve(4.572, 0.670), Kuppa, "C2"),
        new(Plateau, DummyType.H3, 2, "upper tibia compression", "kN", "1/(1 + exp(0.5204 − 0.8189·F + 0.0686·75))", new LogisticCurve(0.5204 + (0.0686 * PlateauBodyMassKg), 0.8189), Kuppa, "C2"),
    ];

    private static readonly Dictionary<(string Name, DummyType Dummy), RiskFunction> ByName = All.ToDictionary(f => (f.Name, f.Dummy));

    /// <summary>The function of a name for a dummy, or null where none is published here (the lower leg of the small-woman dummy).</summary>
    public static RiskFunction? Find(string name, DummyType dummy) => ByName.GetValueOrDefault((name, dummy));

    /// <summary>The function of a name for a dummy that must have it.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public static RiskFunction Get(string name, DummyType dummy) =>
        Find(name, dummy) ?? throw new KeyNotFoundException($"No risk function {name} for dummy {dummy}.");
}
