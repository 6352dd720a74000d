namespace Toepan.Domain.Analysis.Signals;

/// <summary>
/// Magnitude score EM: on the shifted and cut signals, dynamic time warping within 10 % of their length, then
/// e = ‖C − T‖₁/‖T‖₁ of the warped pair; EM = 1 at e = 0, 0 from e = 0.5 on, linear between. ISO/TS 18571 6.3; [iso18571], from memory.
/// </summary>
public static class MagnitudeScore
{
    public const double WindowShare = 0.1;
    public const double LargestError = 0.5;

    public static double Of(ReadOnlySpan<double> t, ReadOnlySpan<double> c)
    {
        var warped = TimeWarping.Align(t, c, Window(t.Length));
        return Math.Max(0, 1 - (SignalComparison.RelativeDistance(warped.Reference, warped.Compared) / LargestError));
    }

    /// <summary>Furthest that paired samples may stand apart: 10 % of the length, rounded up.</summary>
    public static int Window(int length) => (int)Math.Ceiling(WindowShare * length);
}
