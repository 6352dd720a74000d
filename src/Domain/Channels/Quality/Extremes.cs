namespace Toepan.Domain.Channels.Quality;

/// <summary>Smallest and largest of a stretch of finite samples.</summary>
public static class Extremes
{
    public static (double Min, double Max) Of(ReadOnlySpan<double> samples)
    {
        var min = double.PositiveInfinity;
        var max = double.NegativeInfinity;
        foreach (var sample in samples)
        {
            min = Math.Min(min, sample);
            max = Math.Max(max, sample);
        }

        return (min, max);
    }
}
