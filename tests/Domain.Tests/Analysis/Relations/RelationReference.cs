using System.Globalization;
using System.Text.Json;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Relations;

/// <summary>scipy's answers on seeded points and NIST's certified one-way sets (tests/reference/make_relations.py, relations.json).</summary>
internal static class RelationReference
{
    private static readonly JsonElement Root = JsonDocument.Parse(
        File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "reference", "relations.json"))).RootElement;

    internal sealed record Case(double[] X, double[] Y, double[] Pearson, double[] Spearman, double[] TheilSen);

    internal sealed record NistSet(string Name, double Between, double Within, double F, double ResidualSd, double[][] Groups);

    public static TheoryData<int> Cases => [.. Enumerable.Range(0, Root.GetProperty("cases").GetArrayLength())];

    public static TheoryData<int> NistSets => [.. Enumerable.Range(0, Root.GetProperty("nist").GetArrayLength())];

    public static IEnumerable<double[]> Survival => Root.GetProperty("survival").EnumerateArray().Select(Numbers);

    /// <summary>Points and numpy's studentized residuals.</summary>
    public static IEnumerable<(double[] X, double[] Y, double[] Residuals)> Studentized => Root.GetProperty("studentized").EnumerateArray().Select(found =>
    {
        var (x, y) = Points(found);
        return (x, y, Numbers(found.GetProperty("residuals")));
    });

    public static Case At(int index)
    {
        var found = Root.GetProperty("cases")[index];
        var (x, y) = Points(found);
        Assert.Equal(found.GetProperty("sumX").GetDouble(), x.Sum());
        Assert.Equal(found.GetProperty("sumY").GetDouble(), y.Sum());
        return new(x, y, Numbers(found.GetProperty("pearson")), Numbers(found.GetProperty("spearman")), Numbers(found.GetProperty("theilSen")));
    }

    private static (double[] X, double[] Y) Points(JsonElement found)
    {
        var (count, slope, step) = (found.GetProperty("count").GetInt32(), found.GetProperty("slope").GetDouble(), found.GetProperty("step").GetDouble());
        var draws = Draws(found.GetProperty("seed").GetUInt32(), 2 * count);
        var (x, y) = (new double[count], new double[count]);
        for (var i = 0; i < count; i++)
        {
            x[i] = Math.Floor((200 * draws[2 * i] / step) + 0.5) * step;
            y[i] = Math.Floor((((slope * x[i]) + (90 * draws[(2 * i) + 1])) / step) + 0.5) * step;
        }

        return (x, y);
    }

    public static NistSet Nist(int index)
    {
        var set = Root.GetProperty("nist")[index];
        double Read(string name) => double.Parse(set.GetProperty(name).GetString()!, CultureInfo.InvariantCulture);
        return new(
            set.GetProperty("name").GetString()!, Read("between"), Read("within"), Read("f"), Read("residualSd"),
            [.. set.GetProperty("groups").EnumerateArray().Select(group =>
                group.GetString()!.Split(' ').Select(value => double.Parse(value, CultureInfo.InvariantCulture)).ToArray())]);
    }

    private static double[] Numbers(JsonElement list) => [.. list.EnumerateArray().Select(value => value.GetDouble())];

    // Numerical Recipes' 32-bit generator, 24 high bits, as in make_relations.py.
    private static double[] Draws(uint seed, int count)
    {
        var draws = new double[count];
        var state = seed;
        for (var i = 0; i < count; i++)
        {
            state = unchecked((1664525u * state) + 1013904223u);
            draws[i] = ((state >> 8) / 16777216.0) - 0.5;
        }

        return draws;
    }
}
