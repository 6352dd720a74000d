using Toepan.Domain.Analysis.Relations;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Relations;

public sealed class GroupComparisonTests
{
    // NIST StRD, analysis of variance. The sets of average difficulty (SmLs04–06: seven constant leading digits) lose those digits when read as doubles.
    [Theory]
    [MemberData(nameof(RelationReference.NistSets), MemberType = typeof(RelationReference))]
    public void Of_NistSet_MeetsTheCertifiedValues(int index)
    {
        var set = RelationReference.Nist(index);
        var relative = set.Name is "SmLs04" or "SmLs05" or "SmLs06" or "AtmWtAg" ? 1e-7 : 1e-11;

        var found = GroupComparison.Of(set.Groups)!;

        Assert.InRange(Math.Abs((found.F / set.F) - 1), 0, relative);
        Assert.InRange(Math.Abs((found.BetweenSquares / set.Between) - 1), 0, relative);
        Assert.InRange(Math.Abs((found.WithinSquares / set.Within) - 1), 0, relative);
        Assert.InRange(Math.Abs((found.ResidualSd / set.ResidualSd) - 1), 0, relative);
    }

    [Fact]
    public void Of_KnownF_HasScipysProbability()
    {
        // scipy.stats.f.sf, made by tests/reference/make_relations.py. Two groups of n = within/2 + 1 values whose F is the one asked for.
        foreach (var row in RelationReference.Survival.Where(row => row[1] == 1))
        {
            var each = (int)(row[2] / 2) + 1;
            var centred = Enumerable.Range(0, each).Select(i => i - ((each - 1) / 2.0)).ToArray();
            var within = 2 * centred.Sum(value => value * value);
            var gap = Math.Sqrt(row[0] * within / row[2] * 2 / each);

            var found = GroupComparison.Of([centred, [.. centred.Select(value => value + gap)]])!;

            Assert.InRange(Math.Abs(found.F - row[0]), 0, 1e-12);
            Assert.InRange(Math.Abs((found.Probability / row[3]) - 1), 0, 1e-9);
        }
    }

    [Fact]
    public void Of_OneGroup_IsNotGiven() => Assert.Null(GroupComparison.Of([[1, 2, 3], []]));
}
