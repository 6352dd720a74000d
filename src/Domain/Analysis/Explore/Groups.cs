using Toepan.Domain.Analysis.Relations;

namespace Toepan.Domain.Analysis.Explore;

/// <summary>One group of runs and the first measure in it.</summary>
public sealed record GroupSummary(string Name, SampleStatistics Statistics);

/// <summary>The first measure over groups, and whether they differ; the comparison is null where there are too few values.</summary>
public sealed record Groups(IReadOnlyList<GroupSummary> Each, GroupComparison? Comparison)
{
    /// <summary>By <see cref="ExplorePoint.Group"/>, in order of the names.</summary>
    public static Groups Of(IEnumerable<ExplorePoint> points)
    {
        var groups = points.GroupBy(point => point.Group).OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => (group.Key, Values: group.Select(point => point.X).ToArray())).ToList();
        return new([.. groups.Select(group => new GroupSummary(group.Key, SampleStatistics.Of(group.Values)))], GroupComparison.Of(groups.Select(group => group.Values)));
    }
}
