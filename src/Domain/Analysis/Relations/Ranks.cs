namespace Toepan.Domain.Analysis.Relations;

/// <summary>Ranks of values.</summary>
internal static class Ranks
{
    /// <summary>1 for the least; equal values share the mean of their ranks.</summary>
    public static double[] Of(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        var places = new int[sorted.Length];
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = i;
        }

        Array.Sort(sorted, places);
        var ranks = new double[sorted.Length];
        for (var from = 0; from < sorted.Length;)
        {
            var to = from;
            while (to < sorted.Length && sorted[to] == sorted[from])
            {
                to++;
            }

            for (var i = from; i < to; i++)
            {
                ranks[places[i]] = (from + 1 + to) / 2.0;
            }

            from = to;
        }

        return ranks;
    }
}
