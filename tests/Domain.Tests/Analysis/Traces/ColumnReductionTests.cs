using Toepan.Domain.Analysis.Traces;
using Toepan.Domain.Channels;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Traces;

/// <summary>Min–max by column against the full signal, each column searched sample by sample (the slow obvious version).</summary>
public sealed class ColumnReductionTests
{
    public static TheoryData<int, int, double, double, int> Cases => new()
    {
        // seed, samples, from, to, columns; times in s; the record is −0.05 … at 10 kHz or what divides badly
        { 1, 20_000, -0.05, 1.9499, 1000 }, { 2, 20_000, 0, 0.2, 300 }, { 3, 20_000, 0.01234567, 0.7654321, 777 }, { 4, 5_000, -1, 2, 640 },
        { 5, 20_001, 0.1, 1.0001, 1 }, { 6, 3_601, -0.06, 0.3, 1440 }, { 7, 9_999, 0.00005, 0.99995, 333 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Reduce_AnyWindow_KeepsTheExtremesOfEveryColumn(int seed, int count, double from, double to, int columns)
    {
        var history = Noise(seed, count);

        var reduced = ColumnReduction.Reduce(history, from, to, columns);

        Assert.True(reduced.Reduced);
        Assert.Equal(2 * columns, reduced.Values.Length);
        for (var column = 0; column < columns; column++)
        {
            var inside = Inside(history, from, to, columns, column).ToList();
            var pair = new[] { reduced.Values[2 * column], reduced.Values[(2 * column) + 1] };
            if (inside.Count == 0)
            {
                Assert.All(pair, value => Assert.True(double.IsNaN(value)));
                continue;
            }

            Assert.Equal((inside.Min(), inside.Max()), (pair.Min(), pair.Max()));
            Assert.Equal(inside.IndexOf(inside.Min()) <= inside.IndexOf(inside.Max()), pair[0] <= pair[1]);
        }
    }

    [Fact]
    public void Reduce_FewerSamplesThanTwoAColumn_GivesThemAllAndOneToEachSide()
    {
        var history = Noise(8, 1_000);

        var reduced = ColumnReduction.Reduce(history, 0.01, 0.02, 800);

        Assert.False(reduced.Reduced);
        Assert.Equal(0.0099, reduced.FirstS, 1e-9);
        Assert.Equal(history.Values[599..702].ToArray(), reduced.Values);
    }

    [Fact]
    public void Reduce_WindowBesideTheRecord_IsEmpty() => Assert.Empty(ColumnReduction.Reduce(Noise(9, 100), 5, 6, 10).Values);

    [Fact]
    public void Reduce_GapLongerThanAColumn_StaysAGap()
    {
        var values = Enumerable.Repeat(1.0, 10_000).ToArray();
        Array.Fill(values, double.NaN, 4_000, 1_000);

        var reduced = ColumnReduction.Reduce(new TimeHistory(0, 1e-4, values), 0, 0.9999, 100);

        Assert.True(double.IsNaN(reduced.Values[90]));
        Assert.Equal(1.0, reduced.Values[60]);
    }

    private static TimeHistory Noise(int seed, int count)
    {
        var random = new Random(seed);
        return new(-0.05, 1e-4, Enumerable.Range(0, count).Select(_ => random.Next(20) == 0 ? double.NaN : random.NextDouble() - 0.5).ToArray());
    }

    // Every sample asked on its own which column its time falls into.
    private static IEnumerable<double> Inside(TimeHistory history, double from, double to, int columns, int column)
    {
        var slack = 1e-6 * history.IntervalS;
        for (var i = 0; i < history.Count; i++)
        {
            var t = history.TimeAt(i);
            var after = t >= from + ((to - from) * column / columns) - slack;
            var before = column == columns - 1 ? t <= to + slack : t < from + ((to - from) * (column + 1) / columns) - slack;
            if (after && before && double.IsFinite(history.Values.Span[i]))
            {
                yield return history.Values.Span[i];
            }
        }
    }
}
