namespace Toepan.Web.Charts;

/// <summary>Moves labels apart so that none covers another.</summary>
public static class LabelSpread
{
    /// <summary>Positions near the wanted ones, at least <paramref name="gap"/> apart and inside the bounds where they all fit.</summary>
    public static double[] Apart(IReadOnlyList<double> wanted, double gap, double least, double greatest)
    {
        var order = Enumerable.Range(0, wanted.Count).OrderBy(i => wanted[i]).ToArray();
        var placed = new double[wanted.Count];
        var next = least;
        foreach (var i in order)
        {
            placed[i] = Math.Max(next, wanted[i]);
            next = placed[i] + gap;
        }

        var limit = greatest;
        foreach (var i in order.Reverse())
        {
            placed[i] = Math.Min(limit, placed[i]);
            limit = placed[i] - gap;
        }

        return placed;
    }
}
