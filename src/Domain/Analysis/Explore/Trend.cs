namespace Toepan.Domain.Analysis.Explore;

/// <summary>The first measure in one model year.</summary>
public sealed record TrendYear(int Year, SampleStatistics Statistics);

/// <summary>The first measure over first model years: statistics of each year and the least-squares line through the runs, its slope per year.</summary>
public sealed record Trend(IReadOnlyList<TrendYear> Years, LeastSquares? Line)
{
    /// <summary>Over the points whose model year is known.</summary>
    public static Trend Of(IEnumerable<ExplorePoint> points)
    {
        var dated = points.Where(point => point.ModelYear is not null).ToList();
        var years = dated.GroupBy(point => point.ModelYear!.Value).OrderBy(year => year.Key)
            .Select(year => new TrendYear(year.Key, SampleStatistics.Of([.. year.Select(point => point.X)])));
        return new([.. years], LeastSquares.Of([.. dated.Select(point => (double)point.ModelYear!.Value)], [.. dated.Select(point => point.X)]));
    }
}
