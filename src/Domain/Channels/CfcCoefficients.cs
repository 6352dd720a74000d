namespace Toepan.Domain.Channels;

/// <summary>
/// The 2-pole section of the SAE J211-1 Appendix C filter: y[i] = A0·x[i] + A1·x[i−1] + A2·x[i−2] + B1·y[i−1] + B2·y[i−2]
/// (B1 and B2 are added). Two passes give the 4-pole phaseless Butterworth. Constant 2.0775 from memory of J211-1; the frequency
/// response agrees with the published corridor ([j211-1]).
/// </summary>
public readonly record struct CfcCoefficients(double A0, double A1, double A2, double B1, double B2)
{
    /// <summary>wd = 2π · CFC · this: one pass is 3 dB down at 1.24648 · CFC/0.6, two passes at CFC/0.6.</summary>
    public const double CutoffFactor = 2.0775;

    /// <summary>Coefficients for a channel frequency class (Hz) at a sampling interval (s).</summary>
    public static CfcCoefficients For(int filterClass, double intervalS)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(filterClass);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(intervalS);
        var wd = 2 * Math.PI * filterClass * CutoffFactor;
        var wa = Math.Tan(wd * intervalS / 2);
        var wa2 = wa * wa;
        var root2 = Math.Sqrt(2) * wa;
        var d = 1 + root2 + wa2;
        var a0 = wa2 / d;
        return new(a0, 2 * a0, a0, -2 * (wa2 - 1) / d, (-1 + root2 - wa2) / d);
    }
}
