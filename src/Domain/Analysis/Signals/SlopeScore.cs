namespace Toepan.Domain.Analysis.Signals;

/// <summary>
/// Slope score ES: on the shifted and cut signals (not warped) derivatives by central differences (one-sided at the ends), smoothed by
/// a nine-point mean (fewer points, still symmetric, near the ends); e = ‖C′ − T′‖₁/‖T′‖₁; ES = 1 at e = 0, 0 from e = 2 on, linear between.
/// ISO/TS 18571 6.3; [iso18571], from memory; the ends are this method's own reading.
/// </summary>
public static class SlopeScore
{
    public const double LargestError = 2.0;
    private const int HalfMean = 4;

    public static double Of(ReadOnlySpan<double> t, ReadOnlySpan<double> c, double intervalS) =>
        Math.Max(0, 1 - (SignalComparison.RelativeDistance(Slope(t, intervalS), Slope(c, intervalS)) / LargestError));

    private static double[] Slope(ReadOnlySpan<double> values, double intervalS)
    {
        var raw = new double[values.Length];
        for (var i = 0; i < raw.Length; i++)
        {
            var (before, after) = (Math.Max(0, i - 1), Math.Min(raw.Length - 1, i + 1));
            raw[i] = (values[after] - values[before]) / ((after - before) * intervalS);
        }

        var smooth = new double[raw.Length];
        for (var i = 0; i < raw.Length; i++)
        {
            var half = Math.Min(HalfMean, Math.Min(i, raw.Length - 1 - i));
            var sum = 0.0;
            for (var k = i - half; k <= i + half; k++)
            {
                sum += raw[k];
            }

            smooth[i] = sum / ((2 * half) + 1);
        }

        return smooth;
    }
}
