using System.Text;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Ratings;

public sealed class SchemeReaderTests
{
    private static readonly string Document = Embedded();

    [Fact]
    public void Read_CarriedScheme_HasNoProblemsAndEveryRegionOfBothDummies()
    {
        var reading = Read(Document);

        Assert.Empty(reading.Problems);
        Assert.Equal(("offset-frontal-1", "Offset frontal, edition 1"), (reading.Scheme!.Key, reading.Scheme.Title));
        Assert.All(Enum.GetValues<DummyType>(), dummy => Assert.Equal(
            ["head", "neck", "chest", "thigh.left", "thigh.right", "lowerleg.left", "lowerleg.right"], reading.Scheme.RegionsOf(dummy).Select(r => r.Region)));
        Assert.Equal(13, reading.Scheme.Caps.Count);
        Assert.NotNull(ProcedureLibrary.Find(reading.Scheme.Procedure));
    }

    [Fact]
    public void Read_CarriedScheme_NamesASourceForEveryFigure()
    {
        var scheme = SchemeLibrary.Default;

        Assert.All(scheme.Regions.SelectMany(r => r.Limits).Select(l => l.Source), s => Assert.NotEqual("", s));
        Assert.All(scheme.Regions.SelectMany(r => r.Limits), l => Assert.NotEqual(l.Measure, scheme.WordOf(l.Measure)));
        Assert.All(scheme.Structure.Measures, m => Assert.NotEqual(m.Measure, scheme.WordOf(m.Measure)));
    }

    /// <summary>Each row breaks the carried document in one place; the problem must name the line that was broken.</summary>
    [Theory]
    [InlineData("\"edition\": 1,", "\"edition\": \"one\",", "must be a number")]
    [InlineData("\"title\": \"Offset frontal, edition 1\",", "", "title is missing")]
    [InlineData("\"procedure\": \"offset-frontal-64\",", "\"procedure\": \"offset-frontal-64\", \"procedures\": 1,", "procedures is not known here")]
    [InlineData("\"limit\": { \"H3\": 63, \"HF\": 52 }", "\"limit\": { \"H3\": 63 }", "HF is missing")]
    [InlineData("\"limit\": { \"H3\": 63, \"HF\": 52 }", "\"limit\": { \"H3\": 63, \"HF\": -52 }", "must be above zero")]
    [InlineData("\"limit\": { \"H3\": 63, \"HF\": 52 }", "\"limit\": { \"H3\": 63, \"HF\": 52, \"H4\": 1 }", "H4 is no dummy")]
    [InlineData("{ \"high\": 80, \"moderate\": 160, \"low\": 240 }", "{ \"high\": 80, \"moderate\": 60, \"low\": 240 }", "Bounds must rise")]
    [InlineData("{ \"high\": 0.10, \"moderate\": 0.30, \"low\": 0.60 }", "{ \"high\": 0.10, \"moderate\": 0.30 }", "low is missing")]
    [InlineData("\"function\": \"thigh.force\"", "\"function\": \"thigh.farce\"", "no risk function thigh.farce")]
    [InlineData("\"finding\": \"fire\", \"severity\": \"severe\"", "\"finding\": \"fire\", \"severity\": \"bad\"", "severity is bad")]
    [InlineData("\"severity\": \"severe\", \"region\": \"head\"", "\"severity\": \"severe\", \"region\": \"hat\"", "holds hat")]
    [InlineData("\"when\": \"very low\", \"atBest\": \"low\"", "\"when\": \"very low\", \"atBest\": \"lowish\"", "a level is high, moderate, low or very low")]
    [InlineData("\"groups\": [[\"head\"], [\"neck\"], [\"chest\"]]", "\"groups\": [[\"head\"], [\"neck\"]]", "chest of dummy H3 counts 0 times")]
    [InlineData("\"groups\": [[\"head\"], [\"neck\"], [\"chest\"]]", "\"groups\": [[\"head\"], [\"neck\"], [\"chest\", \"trunk\"]]", "names trunk")]
    [InlineData("\"dummies\": [\"HF\"], \"name\"", "\"dummies\": [\"H3\"], \"name\"", "legs has 2 rules for dummy H3")]
    [InlineData("\"words\": \"there was a fire\"", "\"words\": \"there was a fire\", \"words\": \"twice\"", "words is given twice")]
    [InlineData("\"stepsBetterThanWorst\": 1", "\"stepsBetterThanWorst\": -1", "must not be negative")]
    [InlineData("\"caps\": [", "\"caps\": [ 7,", "An object is expected")]
    [InlineData("\"title\": \"Offset frontal, edition 1\",", "\"title\": \"Offset frontal, edition 1\"", "not JSON")]
    public void Read_BrokenDocument_NamesTheLine(string good, string bad, string message)
    {
        Assert.Contains(good, Document, StringComparison.Ordinal);
        var at = Document.IndexOf(good, StringComparison.Ordinal);
        var reading = Read(Document[..at] + bad + Document[(at + good.Length)..]);

        Assert.Null(reading.Scheme);
        var problem = Assert.Single(reading.Problems.Where(p => p.Message.Contains(message, StringComparison.Ordinal)).Take(1));
        Assert.Equal("test.json", problem.File);
        Assert.True(problem.Line > 0);
        var brokenLine = Document[..at].Count(c => c == '\n') + 1;
        var pointsAtWhole = problem.Code is "scheme.regions" or "scheme.overall" or "scheme.caps" or "scheme.not-json" || message == "title is missing";
        Assert.True(pointsAtWhole || problem.Line == brokenLine, $"line {problem.Line}, broken {brokenLine}");
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("{\"regions\": [[]], \"structure\": 3, \"overall\": [], \"words\": {\"a\": {}}}")]
    public void Read_SomethingElse_IsRefusedWithProblems(string text)
    {
        var reading = Read(text);

        Assert.Null(reading.Scheme);
        Assert.NotEmpty(reading.Problems);
    }

    [Fact]
    public void Read_TooDeepOrTooLong_IsRefused()
    {
        Assert.Null(Read(string.Concat(Enumerable.Repeat("[", 5000))).Scheme);
        Assert.Contains(Read(new string(' ', SchemeReader.MaxBytes + 1)).Problems, p => p.Code == "scheme.too-long");
    }

    /// <summary>No level or bound in code: another document gives other levels.</summary>
    [Fact]
    public void Rate_ByAnotherScheme_FollowsTheDocument()
    {
        var strict = Read(Document.Replace("\"stepsBetterThanWorst\": 1", "\"stepsBetterThanWorst\": 0", StringComparison.Ordinal)
            .Replace("{ \"high\": 80, \"moderate\": 160, \"low\": 240 }", "{ \"high\": 10, \"moderate\": 15, \"low\": 20 }", StringComparison.Ordinal)).Scheme!;
        var inputs = RatingCase.Benign().Inputs();

        Assert.Equal(ProtectionLevel.High, Rater.Rate(RatingCase.Scheme, inputs).Overall);
        Assert.Equal((ProtectionLevel.VeryLow, ProtectionLevel.Low), (Rater.Rate(strict, inputs).Structure.Level!.Value, Rater.Rate(strict, inputs).Overall!.Value));
    }

    [Theory]
    [InlineData(ProtectionLevel.High, "high protection, step 4 of 4")]
    [InlineData(ProtectionLevel.Moderate, "moderate protection, step 3 of 4")]
    [InlineData(ProtectionLevel.Low, "low protection, step 2 of 4")]
    [InlineData(ProtectionLevel.VeryLow, "very low protection, step 1 of 4")]
    public void Full_OfLevel_SaysTheStep(ProtectionLevel level, string text)
    {
        Assert.Equal(text, level.Full());
        Assert.Equal(level, LevelWords.Parse(level.Word()));
    }

    private static SchemeReading Read(string text) => SchemeReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), "test.json");

    private static string Embedded()
    {
        using var stream = typeof(SchemeLibrary).Assembly.GetManifestResourceStream("Ratings/Data/offset-frontal-1.json")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
