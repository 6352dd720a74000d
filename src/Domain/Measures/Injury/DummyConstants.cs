using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Injury;

/// <summary>
/// What a measure needs to know of a dummy. Sources: neck intercepts and offset [fmvss208] S6.6, S15.3.6 and [part572] 572.133(b)(1)(ii),
/// read; for the average man the offset in SI from memory ([part572] 572.33(b) prints it as 0.058 ft, a rounding 0.57 % less);
/// filter class of the deflection [part572] 572.36(i)(6), 572.137(m)(3)(iii), read; viscous constants [j1727], secondary; tibia
/// critical values [r94] Annex 4, from memory.
/// </summary>
public sealed record DummyConstants
{
    /// <summary>Nij intercept of axial tension, kN.</summary>
    public required double NijTensionKn { get; init; }

    /// <summary>Nij intercept of axial compression, kN.</summary>
    public required double NijCompressionKn { get; init; }

    /// <summary>Nij intercept of flexion, N·m.</summary>
    public required double NijFlexionNm { get; init; }

    /// <summary>Nij intercept of extension, N·m.</summary>
    public required double NijExtensionNm { get; init; }

    /// <summary>Height of the upper neck cell's axis from the occipital condyle, m.</summary>
    public double CondyleOffsetM { get; init; } = 0.01778;

    /// <summary>Filter class of the chest deflection.</summary>
    public required int DeflectionClass { get; init; }

    /// <summary>Scale of the viscous criterion.</summary>
    public double ViscousScale { get; init; } = 1.3;

    /// <summary>Depth by which the deflection is divided in the viscous criterion, m. A formula constant, not a body dimension.</summary>
    public required double ViscousDepthM { get; init; }

    /// <summary>Critical bending moment of the tibia index, N·m.</summary>
    public required double TibiaMomentNm { get; init; }

    /// <summary>Critical axial force of the tibia index, kN.</summary>
    public required double TibiaForceKn { get; init; }

    private static readonly DummyConstants AverageMan = new()
    {
        NijTensionKn = 6.806,
        NijCompressionKn = 6.160,
        NijFlexionNm = 310,
        NijExtensionNm = 135,
        DeflectionClass = 180,
        ViscousDepthM = 0.229,
        TibiaMomentNm = 225,
        TibiaForceKn = 35.9,
    };

    private static readonly DummyConstants SmallWoman = new()
    {
        NijTensionKn = 4.287,
        NijCompressionKn = 3.880,
        NijFlexionNm = 155,
        NijExtensionNm = 67,
        DeflectionClass = 600,
        ViscousDepthM = 0.187,
        TibiaMomentNm = 115,
        TibiaForceKn = 22.9,
    };

    public static DummyConstants Of(DummyType dummy) => dummy switch
    {
        DummyType.H3 => AverageMan,
        DummyType.HF => SmallWoman,
        _ => throw new ArgumentOutOfRangeException(nameof(dummy), dummy, "No constants for this dummy."),
    };
}
