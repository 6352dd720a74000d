using Toepan.Domain.Analysis.Relations;

namespace Toepan.Domain.Analysis.Explore;

/// <summary>How two measures go together over a set of runs. Each part is null where the points are too few or do not vary.</summary>
/// <param name="Count">Runs that have both.</param>
/// <param name="Pearson">Straight-line correlation.</param>
/// <param name="Spearman">Correlation of the ranks.</param>
/// <param name="Line">Least-squares line.</param>
/// <param name="Robust">Line that wild values do not move.</param>
public sealed record Relation(int Count, Correlation? Pearson, Correlation? Spearman, LeastSquares? Line, TheilSen? Robust)
{
    /// <summary>Over the points, x first.</summary>
    public static Relation Of(IReadOnlyList<ExplorePoint> points)
    {
        var (x, y) = (points.Select(point => point.X).ToArray(), points.Select(point => point.Y).ToArray());
        return new(x.Length, Correlation.Pearson(x, y), Correlation.Spearman(x, y), LeastSquares.Of(x, y), TheilSen.Of(x, y));
    }
}
