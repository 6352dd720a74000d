using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Ratings;

/// <summary>The same scheme as YAML and as JSON; what YAML may not bring; the published schema against the reader (second opinion: JsonSchema.Net).</summary>
public sealed class SchemeYamlTests
{
    private static readonly string Yaml = File.ReadAllText(SchemeFiles.Independent);
    private static readonly JsonSchema Schema = JsonSchema.FromText(SchemeSchema.Text);
    private static readonly string Json = File.ReadAllText(SchemeFiles.Carried);

    [Fact]
    public void Read_IndependentScheme_HasItsOwnRegions()
    {
        var scheme = SchemeFiles.ReadFile(SchemeFiles.Independent);

        Assert.Equal(
            ["skull", "trunk", "collar", "thigh.left", "thigh.right", "shin.left", "shin.right", "wheel"], scheme.RegionsOf(DummyType.H3).Select(rule => rule.Region));
        Assert.Equal(["skull", "trunk", "shin.left", "shin.right", "wheel"], scheme.RegionsOf(DummyType.HF).Select(rule => rule.Region));
        Assert.Equal(2, scheme.Overall.StepsBetterThanWorst);
    }

    /// <summary>JSON is YAML: read either way the carried scheme rates the same.</summary>
    [Fact]
    public void Read_JsonAsYaml_GivesTheSameScheme()
    {
        var asYaml = SchemeFiles.Read(Json, "scheme.yaml");

        Assert.Empty(asYaml.Problems);
        for (var seed = 0; seed < 20; seed++)
        {
            var inputs = RandomRuns.Draw(new Random(seed), 0.05, 0.5).Inputs();
            Assert.Equal(Rater.Rate(SchemeLibrary.Default, inputs).Explanation, Rater.Rate(asYaml.Scheme!, inputs).Explanation);
        }
    }

    /// <summary>Each row breaks the YAML document in one place; the problem names that line.</summary>
    [Theory]
    [InlineData("bounds: { high: 38, moderate: 48, low: 57.5 }", "bounds: { high: 38, moderate: 28, low: 57.5 }", "these are 38, 28, 57.5")]
    [InlineData("load: neck.tension, function: neck.force", "load: neck.tension, function: neck.farce", "no risk function neck.farce")]
    [InlineData("load: neck.tension, function: neck.force", "load: chest.deflection, function: neck.force", "chest.deflection has the unit 'mm'")]
    [InlineData("measure: chest.viscous,", "measure: chest.viscious,", "There is no measure chest.viscious")]
    [InlineData("measure: chest.viscous,", "measure: conduct.speed,", "this one is no load")]
    [InlineData("unit: m/s", "unit: km/h", "not 'km/h'")]
    [InlineData("finding: head-strike", "finding: hat-strike", "no kind of finding")]
    [InlineData("region: skull, atBest", "region: hat, atBest", "holds hat")]
    [InlineData("procedure: offset-frontal-64", "procedure: other", "no procedure other")]
    [InlineData("key: trunk-and-limbs-1", "key: Trunk", "ends with the edition")]
    [InlineData("edition: 1", "edition: 1.5", "whole number")]
    [InlineData("edition: 1", "edition: \"1\"", "must be a number")]
    [InlineData("stepsBetterThanWorst: 2", "stepsBetterThanWorst: 9", "at most 3")]
    [InlineData("rule: cell.low, when: low, atBest: low", "rule: cell.low, when: low, atBest: high", "better level")]
    [InlineData("measure: structure.opening.closure, bounds", "measure: chest.a3ms, bounds", "rated on measures of the vehicle")]
    [InlineData("source: Written for tests; figures are nobody's.", "source: *w", "Anchors")]
    [InlineData("title: Trunk and limbs, edition 1", "title: &t Trunk", "Anchors")]
    [InlineData("title: Trunk and limbs, edition 1", "title: !!str Trunk", "tags")]
    [InlineData("title: Trunk and limbs, edition 1", "title: Trunk: and", "not YAML")]
    [InlineData("title: Trunk and limbs, edition 1", "title: A\ntitle: B", "title is given twice")]
    public void Read_BrokenYaml_NamesTheLine(string good, string bad, string message)
    {
        Assert.Contains(good, Yaml, StringComparison.Ordinal);
        var at = Yaml.IndexOf(good, StringComparison.Ordinal);
        var reading = SchemeFiles.Read(Yaml[..at] + bad + Yaml[(at + good.Length)..], "test.yaml");

        Assert.Null(reading.Scheme);
        var broken = Yaml[..at].Count(c => c == '\n') + 1 + (message.Contains("twice", StringComparison.Ordinal) ? 1 : 0);
        var found = reading.Problems.Where(p => p.Message.Contains(message, StringComparison.Ordinal)).ToList();
        Assert.True(found.Exists(p => p.Line == broken && p.File == "test.yaml"), string.Join('\n', reading.Problems.Select(p => $"{p.Line} (broken {broken}): {p.Message}")));
    }

    [Fact]
    public void Read_AliasBomb_IsRefusedAtOnce()
    {
        var bomb = new StringBuilder("a: &a [x, x, x, x, x, x, x, x, x]\n");
        for (var level = 'b'; level < 'n'; level++)
        {
            bomb.Append(level).Append(": &").Append(level).Append(" [").AppendJoin(", ", Enumerable.Repeat($"*{(char)(level - 1)}", 9)).Append("]\n");
        }

        var reading = SchemeFiles.Read(bomb.ToString(), "bomb.yaml");

        Assert.Equal((1, "scheme.yaml"), (reading.Problems[0].Line, reading.Problems[0].Code));
    }

    [Theory]
    [InlineData("")]
    [InlineData("# nothing\n")]
    [InlineData("- 1\n- 2\n")]
    [InlineData("key: a\n---\nkey: b\n")]
    [InlineData("\t")]
    [InlineData("? [a, b]\n: c\n")]
    public void Read_OtherYaml_IsRefusedWithALine(string text)
    {
        var reading = SchemeFiles.Read(text, "test.yaml");

        Assert.Null(reading.Scheme);
        Assert.All(reading.Problems, problem => Assert.True(problem.Line >= 1));
        Assert.NotEmpty(reading.Problems);
    }

    [Fact]
    public void Read_DeepOrManyValued_IsRefused()
    {
        Assert.NotEmpty(SchemeFiles.Read(new string('[', 500) + new string(']', 500), "deep.yaml").Problems);
        Assert.NotEmpty(SchemeFiles.Read("a: [" + string.Join(',', Enumerable.Repeat("1", 60_000)) + "]", "many.yaml").Problems);
    }

    /// <summary>Latin-1 is not UTF-8.</summary>
    [Fact]
    public void Read_OtherEncoding_IsRefused() =>
        Assert.Contains(SchemeReader.Read(new MemoryStream([(byte)'k', (byte)':', (byte)' ', 0xE9]), "x.yaml").Problems, problem => problem.Code == "scheme.not-text");

    [Fact]
    public void Coherence_OfBothSchemes_PassesWithSentences()
    {
        foreach (var (text, file) in new[] { (Yaml, "a.yaml"), (Json, "a.json") })
        {
            var checks = SchemeFiles.Read(text, file).Coherence;

            Assert.All(checks, check => Assert.True(check.Passed && check.Text.EndsWith('.')));
            Assert.Equal(["bounds", "functions", "monotone", "reachable", "overall", "caps", "occupants", "dummies"], checks.Select(check => check.Check));
        }
    }

    /// <summary>Levels that cannot be reached: a limit below the bound of high that allows only very low; an overall tie that leaves nothing.</summary>
    [Theory]
    [InlineData("limit: { H3: 180, HF: 170 }", "limit: { H3: 180, HF: 170 }", null)]
    [InlineData("holds:\n    - { rule: cell.moderate, when: moderate", "holds:\n    - { rule: cell.high, when: high, atBest: moderate }\n    - { rule: cell.moderate, when: moderate", "overall level can never be high")]
    [InlineData("bounds: { high: 45, moderate: 60, low: 80 }", "bounds: { high: -5, moderate: 60, low: 80 }", "trunk of dummy H3 can never be rated high")]
    [InlineData("when: very low, atBest: very low", "when: very low, atBest: high", "better level")]
    public void Coherence_ContradictoryScheme_IsRefused(string good, string bad, string? message)
    {
        Assert.Contains(good, Yaml, StringComparison.Ordinal);
        var reading = SchemeFiles.Read(Yaml.Replace(good, bad, StringComparison.Ordinal), "test.yaml");

        Assert.Equal(message is null, reading.Scheme is not null);
        Assert.True(message is null || reading.Problems.Any(p => p.Message.Contains(message, StringComparison.Ordinal) && p.Line > 1));
    }

    [Fact]
    public void Schema_BothSchemes_AreValid()
    {
        Assert.True(Accepts(JsonNode.Parse(Json)!));
        Assert.True(Accepts(JsonOf(SchemeFiles.Folder)));
    }

    /// <summary>What the schema refuses the reader refuses too.</summary>
    [Theory]
    [InlineData("\"edition\": 1,", "\"edition\": \"one\",")]
    [InlineData("\"title\": \"Offset frontal, edition 1\",", "")]
    [InlineData("\"title\": \"Offset frontal, edition 1\",", "\"title\": \"\",")]
    [InlineData("\"procedure\": \"offset-frontal-64\",", "\"procedure\": \"offset-frontal-64\", \"procedures\": 1,")]
    [InlineData("\"limit\": { \"H3\": 63, \"HF\": 52 }", "\"limit\": { \"H3\": 63, \"HF\": -52 }")]
    [InlineData("\"limit\": { \"H3\": 63, \"HF\": 52 }", "\"limit\": { \"H3\": 63, \"H4\": 52 }")]
    [InlineData("{ \"high\": 0.10, \"moderate\": 0.30, \"low\": 0.60 }", "{ \"high\": 0.10, \"moderate\": 0.30 }")]
    [InlineData("\"severity\": \"severe\", \"region\": \"head\"", "\"severity\": \"bad\", \"region\": \"head\"")]
    [InlineData("\"when\": \"very low\", \"atBest\": \"low\"", "\"when\": \"very low\", \"atBest\": \"lowish\"")]
    [InlineData("\"stepsBetterThanWorst\": 1", "\"stepsBetterThanWorst\": 4")]
    [InlineData("\"key\": \"offset-frontal-1\"", "\"key\": \"Offset\"")]
    [InlineData("\"caps\": [", "\"caps\": [ 7,")]
    public void Schema_BrokenDocument_IsRefusedByBoth(string good, string bad)
    {
        Assert.Contains(good, Json, StringComparison.Ordinal);
        var at = Json.IndexOf(good, StringComparison.Ordinal);
        var broken = Json[..at] + bad + Json[(at + good.Length)..];

        Assert.False(Accepts(JsonNode.Parse(broken)!));
        Assert.Null(SchemeFiles.Read(broken, "test.json").Scheme);
    }

    private static bool Accepts(JsonNode document)
    {
        using var parsed = JsonDocument.Parse(document.ToJsonString());
        return Schema.Evaluate(parsed.RootElement).IsValid;
    }

    /// <summary>The independent scheme as JSON, by PyYAML.</summary>
    private static JsonNode JsonOf(string folder)
    {
        using var process = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo(
            "/usr/bin/python3", ["-c", "import json,sys,yaml; print(json.dumps(yaml.safe_load(open(sys.argv[1]))))", Path.Combine(folder, "trunk-and-limbs-1.yaml")])
        {
            RedirectStandardOutput = true,
        })!;
        var json = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return JsonNode.Parse(json)!;
    }
}
