using System.Net;
using System.Text.Json;
using Toepan.Api.Security;
using Toepan.Api.Tests.Programme;
using Toepan.Support;

namespace Toepan.Api.Tests.Analysis.Historic;

/// <summary>352 historic results against R (tests/reference/make_results.py says how they were made).</summary>
public sealed class ResultStatisticsTests(PostgresFixture postgres)
{
    private const double Tolerance = 1e-10;
    private static readonly string[] Figures = ["mean", "sd", "lowerQuartile", "median", "upperQuartile"];

    [Fact]
    public async Task Measures_OfEveryClass_EqualR()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        var reference = JsonDocument.Parse(await File.ReadAllTextAsync(Reference("results.json"), TestContext.Current.CancellationToken)).RootElement;
        var (expected, pair) = (reference.GetProperty("classes"), reference.GetProperty("pair"));
        var brought = await engineer.Bring(await File.ReadAllBytesAsync(Reference("results.csv"), TestContext.Current.CancellationToken));
        Assert.Equal((HttpStatusCode.Created, "352"), (brought.Status, brought.Member("created")));
        var compared = 0;

        foreach (var vehicleClass in expected.EnumerateObject())
        {
            var table = (await engineer.Read($"/api/v1/classes/{vehicleClass.Name}/measures")).Json;
            var statistics = table.GetProperty("statistics").EnumerateArray().ToDictionary(one => one.GetProperty("measure").GetString()!);
            Assert.Equal(vehicleClass.Value.EnumerateObject().Select(one => one.Name).Order(StringComparer.Ordinal), statistics.Keys.Order(StringComparer.Ordinal));
            foreach (var measure in vehicleClass.Value.EnumerateObject())
            {
                Assert.Equal(measure.Value.GetProperty("count").GetInt32(), statistics[measure.Name].GetProperty("count").GetInt32());
                foreach (var figure in Figures)
                {
                    var (r, ours) = (measure.Value.GetProperty(figure).GetDouble(), statistics[measure.Name].GetProperty(figure).GetDouble());
                    Assert.True(Math.Abs(r - ours) <= Tolerance * Math.Max(1, Math.Abs(r)), $"{vehicleClass.Name} {measure.Name} {figure}: {ours}, R has {r}");
                    compared++;
                }
            }
        }

        Assert.Equal(4 * 16 * 5, compared);

        // The pair: R's cor (Pearson, Spearman) and lm over the drivers of all classes.
        var answer = (await engineer.Read("/api/v1/explore?x=structure.footwell.rearward&y=tibia.left.upper.index")).Json.GetProperty("relation");
        Assert.Equal(pair.GetProperty("count").GetInt32(), answer.GetProperty("count").GetInt32());
        Near("pearson", answer.GetProperty("pearson").GetProperty("value").GetDouble());
        Near("spearman", answer.GetProperty("spearman").GetProperty("value").GetDouble());
        Near("intercept", answer.GetProperty("line").GetProperty("intercept").GetDouble());
        Near("slope", answer.GetProperty("line").GetProperty("slope").GetDouble());

        void Near(string name, double ours)
        {
            var r = pair.GetProperty(name).GetDouble();
            Assert.True(Math.Abs(r - ours) <= Tolerance * Math.Max(1, Math.Abs(r)), $"{name}: {ours}, R has {r}");
        }
    }

    private static string Reference(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Program.sln")))
        {
            folder = folder.Parent!;
        }

        return Path.Combine(folder.FullName, "tests", "reference", name);
    }
}
