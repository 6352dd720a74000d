namespace Toepan.Domain.Analysis.Signals;

/// <summary>
/// Corridor score Z: the mean over all samples of 1 inside ±0.05·Tn, 0 outside ±0.50·Tn, and ((outer − |T − C|)/(outer − inner))²
/// between, Tn = max |T|. ISO/TS 18571 6.2; [iso18571], from memory.
/// </summary>
public static class CorridorScore
{
    public const double Inner = 0.05;
    public const double Outer = 0.50;

    public static double Of(ReadOnlySpan<double> t, ReadOnlySpan<double> c)
    {
        var largest = SignalComparison.Largest(t);
        var (inner, outer) = (Inner * largest, Outer * largest);
        var sum = 0.0;
        for (var i = 0; i < t.Length; i++)
        {
            var apart = Math.Abs(t[i] - c[i]);
            var share = Math.Clamp((outer - apart) / (outer - inner), 0, 1);
            sum += share * share;
        }

        return sum / t.Length;
    }
}
