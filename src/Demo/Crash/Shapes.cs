namespace Toepan.Demo.Crash;

/// <summary>Small signal helpers of the generator.</summary>
public static class Shapes
{
    /// <summary>A half-sine pulse of a given peak, from start over its length; zero elsewhere.</summary>
    public static double HalfSine(double t, double startS, double lengthS, double peak) =>
        t <= startS || t >= startS + lengthS ? 0 : peak * Math.Sin(Math.PI * (t - startS) / lengthS);

    /// <summary>The signal divided by its largest magnitude; all zero stays zero.</summary>
    public static double[] Normalised(double[] signal)
    {
        var peak = signal.Max(Math.Abs);
        return peak == 0 ? [.. signal] : [.. signal.Select(value => value / peak)];
    }

    /// <summary>A first-order lag, as of a soft part behind a stiff one.</summary>
    public static double[] Lagged(double[] signal, double stepS, double timeConstantS)
    {
        var share = stepS / (timeConstantS + stepS);
        var result = new double[signal.Length];
        var state = 0.0;
        for (var i = 0; i < signal.Length; i++)
        {
            state += share * (signal[i] - state);
            result[i] = state;
        }

        return result;
    }
}
