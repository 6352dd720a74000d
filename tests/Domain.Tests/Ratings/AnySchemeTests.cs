using System.Diagnostics;
using System.Text.Json;
using Toepan.Demo.Packages;
using Toepan.Demo.Scenario;
using Toepan.Domain.Analysis.Holds;
using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Measures;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Ratings;

/// <summary>
/// Any scheme, not just the carried one: forty made packages and four hundred drawn runs by two schemes against a slow rater in Python with scipy
/// and PyYAML, written from the text of the rules (tests/reference/schemes/rate_any.py). Levels must agree exactly.
/// </summary>
public sealed class AnySchemeTests
{
    private const string Python = "/usr/bin/python3";

    public static TheoryData<string> Schemes => [SchemeFiles.Independent, SchemeFiles.Carried];

    [Theory]
    [MemberData(nameof(Schemes))]
    public async Task Rate_FortyPackages_AgreesWithTheSlowRater(string scheme) => await Compare(scheme, [.. Packages()]);

    [Theory]
    [MemberData(nameof(Schemes))]
    public async Task Rate_DrawnRuns_AgreesWithTheSlowRater(string scheme)
    {
        var random = new Random(20);
        await Compare(scheme, [.. Enumerable.Range(0, 400).Select(_ => Extended(RandomRuns.Draw(random, 0.02, 0.5), random).Inputs())]);
    }

    /// <summary>The arithmetic without words agrees with the rater under the independent scheme too.</summary>
    [Fact]
    public void LevelModel_IndependentScheme_AgreesWithTheRater()
    {
        var (scheme, random) = (SchemeFiles.ReadFile(SchemeFiles.Independent), new Random(7));
        for (var i = 0; i < 200; i++)
        {
            var inputs = Extended(RandomRuns.Draw(random, 0.02, 0.3), random).Inputs();
            var model = LevelModelBuilder.Build(scheme, inputs, ScatterTable.Of(scheme, []));

            Assert.Equal(Rater.Rate(scheme, inputs).Overall, model.Overall(model.Values.ToArray()));
        }
    }

    /// <summary>Raising a load never makes a level better, in any region or overall, under either scheme.</summary>
    [Theory]
    [MemberData(nameof(Schemes))]
    public void Rate_WorseInput_NeverGivesABetterLevel(string path)
    {
        var (scheme, random) = (SchemeFiles.ReadFile(path), new Random(11));
        for (var i = 0; i < 300; i++)
        {
            var inputs = Extended(RandomRuns.Draw(random, 0, 0.3), random).Inputs();
            var worse = inputs with { Measures = [.. inputs.Measures.Select(m => random.Next(4) == 0 ? m with { Value = m.Value * (1 + random.NextDouble()) } : m)] };
            var (before, after) = (Rater.Rate(scheme, inputs), Rater.Rate(scheme, worse));

            Assert.True(after.Overall >= before.Overall || before.Overall is null);
            Assert.All(before.Regions.Zip(after.Regions), pair => Assert.True(pair.First.Level is null || pair.Second.Level >= pair.First.Level));
        }
    }

    [Fact]
    public void Rate_DummyWithoutRegions_IsNotRatedAndSaysSo()
    {
        var text = File.ReadAllText(SchemeFiles.Independent).Replace("dummies: [H3, HF]", "dummies: [H3]", StringComparison.Ordinal);
        var small = text.Replace("    - dummies: [HF]\n      worstOf: [skull, trunk, wheel]\n", "", StringComparison.Ordinal)
            .Replace("    - dummies: [HF]\n      worstOf: [shin.left, shin.right]\n", "", StringComparison.Ordinal)
            .Replace("{ H3: 180, HF: 170 }", "{ H3: 180 }", StringComparison.Ordinal).Replace("{ H3: 120, HF: 110 }", "{ H3: 120 }", StringComparison.Ordinal);
        var reading = SchemeFiles.Read(small, "small.yaml");
        Assert.Empty(reading.Problems);

        var rating = Rater.Rate(reading.Scheme!, RatingCase.Benign(DummyType.HF).Inputs());

        Assert.Null(rating.Overall);
        Assert.Equal("the scheme has no regions for dummy HF", rating.NotRated);
        Assert.Empty(rating.Regions);
    }

    /// <summary>Ten thousand runs, sentences and all, in two seconds of work, ten allowed here: a debug build on a machine that other tests share.</summary>
    [Fact]
    public void Rate_TenThousandRuns_TakesSeconds()
    {
        var (scheme, random) = (SchemeLibrary.Default, new Random(3));
        var runs = Enumerable.Range(0, 500).Select(_ => RandomRuns.Draw(random, 0.001, 0.2).Inputs()).ToList();
        _ = runs.Select(run => Rater.Rate(scheme, run)).Count(rating => rating.Overall is not null);
        var watch = Stopwatch.StartNew();
        for (var round = 0; round < 20; round++)
        {
            runs.ForEach(run => Rater.Rate(scheme, run));
        }

        TestContext.Current.SendDiagnosticMessage($"10 000 runs rated in {watch.Elapsed.TotalSeconds:F2} s");
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 10);
    }

    private static async Task Compare(string scheme, IReadOnlyList<RatingInputs> runs)
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        await File.WriteAllTextAsync(file, JsonSerializer.Serialize(runs.Select(Written)), TestContext.Current.CancellationToken);
        using var expected = JsonDocument.Parse(await Run(scheme, file));
        File.Delete(file);
        var rules = SchemeFiles.ReadFile(scheme);
        var wrong = new List<string>();
        var levels = new HashSet<string?>();
        for (var i = 0; i < runs.Count; i++)
        {
            var rating = Rater.Rate(rules, runs[i]);
            var slow = expected.RootElement[i];
            levels.Add(rating.Overall?.Word());
            Check("overall", rating.Overall, slow.GetProperty("overall"));
            Check("structure", rating.Structure.Level, slow.GetProperty("structure"));
            Assert.Equal(slow.GetProperty("regions").EnumerateObject().Count(), rating.Regions.Count);
            foreach (var region in rating.Regions)
            {
                Check(region.Region, region.Level, slow.GetProperty("regions").GetProperty($"{region.Position} {region.Region}"));
            }

            void Check(string what, ProtectionLevel? level, JsonElement word)
            {
                if (level?.Word() != word.GetString())
                {
                    wrong.Add($"run {i} {what}: {level?.Word() ?? "not rated"}, the slow rater says {word}");
                }
            }
        }

        Assert.Empty(wrong);
        Assert.True(levels.Count >= 4, string.Join(", ", levels));
    }

    private static async Task<string> Run(string scheme, string runs)
    {
        var start = new ProcessStartInfo(Python, [Path.Combine(SchemeFiles.Folder, "rate_any.py"), scheme, runs]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["PYTHONDONTWRITEBYTECODE"] = "1";
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 0, await errors);
        return output;
    }

    private static object Written(RatingInputs run) => new
    {
        valid = run.Valid,
        occupants = run.Occupants.Select(o => new { position = o.Position, seat = o.Seat, dummy = o.Dummy.ToString() }),
        measures = run.Measures.Select(m => new { code = m.Code, position = m.Position, value = m.Value }),
        findings = run.Findings.Select(f => new { kind = f.Kind, severity = f.Severity.ToString().ToLowerInvariant(), region = f.Region, position = f.Position }),
    };

    private static IEnumerable<RatingInputs> Packages()
    {
        var procedure = ProcedureLibrary.Find("offset-frontal-64")!;
        var built = NorthmoorProgramme.Runs.Select(run => PackageBuilder.Build(run, 1)).Concat(NorthmoorProgramme.Runs.Take(10).Select(run => PackageBuilder.Build(run, 2)));
        foreach (var package in built)
        {
            var reduction = Reducer.Reduce(package, procedure, []);
            yield return new(reduction.Conduct.Valid, package.Programme.Occupants, reduction.Measures, package.Findings);
        }
    }

    /// <summary>Measures only the independent scheme looks at.</summary>
    private static RatingCase Extended(RatingCase run, Random random)
    {
        foreach (var position in run.Inputs().Occupants.Select(o => o.Position))
        {
            run.Set("head.peak", 40 + (170 * random.NextDouble()), position).Set("pelvis.a3ms", 20 + (80 * random.NextDouble()), position)
                .Set("foot.left.a3ms", 40 + (100 * random.NextDouble()), position).Set("foot.right.a3ms", 40 + (100 * random.NextDouble()), position);
        }

        return run;
    }
}
