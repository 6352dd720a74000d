using System.Text;
using System.Text.Json;
using Json.Schema;
using Toepan.Domain.Packages;
using Toepan.Domain.Tests.Packages.Malformed;
using Xunit;

namespace Toepan.Domain.Tests.Packages;

/// <summary>
/// The served schema and the reader agree. The second opinion on what the schema says is JsonSchema.Net, a general-purpose validator of
/// draft 2020-12.
/// </summary>
public sealed class ProgrammeSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(ProgrammeSchema.Text);

    // What a schema cannot say: the programme's own keys, a calendar, one value against another, text no database keeps.
    private static readonly HashSet<string> BeyondSchema =
    [
        "unknown procedure", "unknown class", "repeat of itself", "model years backwards", "two on one seat", "two axes on one line", "day that is none",
        "member twice", "half a surrogate pair", "NUL in a text", "half a surrogate pair in a name", "unknown member beyond double", "number below double",
    ];

    public static TheoryData<string> Documents => [.. MalformedProgrammes.All().Where(item => !BeyondSchema.Contains(item.Name)).Select(item => item.Name)];

    private static bool SchemaAccepts(string json)
    {
        using var document = JsonDocument.Parse(json);
        return Schema.Evaluate(document.RootElement, new EvaluationOptions { RequireFormatValidation = true }).IsValid;
    }

    private static string? JsonOf(MalformedCase malformed)
    {
        using var zip = new System.IO.Compression.ZipArchive(new MemoryStream(malformed.Zip()));
        if (zip.GetEntry("programme.json") is not { } entry)
        {
            return null;
        }

        using var reader = new StreamReader(entry.Open(), new UTF8Encoding(true, throwOnInvalidBytes: false));
        return reader.ReadToEnd();
    }

    [Theory]
    [MemberData(nameof(Documents))]
    public void Schema_Document_IsJudgedAsTheReaderJudgesIt(string name)
    {
        var malformed = MalformedProgrammes.All().Single(item => item.Name == name);
        if (malformed.Problems.Any(problem => problem.Contains("syntax", StringComparison.Ordinal) || problem.Contains("too-deep", StringComparison.Ordinal)
            || problem.Contains("no-programme", StringComparison.Ordinal) || problem.Contains("encoding", StringComparison.Ordinal)))
        {
            Assert.False(malformed.Readable);
            return;
        }

        Assert.Equal(malformed.Readable, SchemaAccepts(JsonOf(malformed)!));
    }

    [Fact]
    public void Schema_Sample_IsAccepted() => Assert.True(SchemaAccepts(SamplePackage.Json));

    [Theory]
    [InlineData("$", "test", "procedure", "date", "vehicle", "conduct", "occupants")]
    [InlineData("vehicle", "key", "class")]
    [InlineData("conduct", "impactSpeedKmh")]
    public void Schema_RequiredMembers_AreThoseOfTheFormat(string of, params string[] required)
    {
        using var schema = JsonDocument.Parse(ProgrammeSchema.Text);
        var node = of == "$" ? schema.RootElement : schema.RootElement.GetProperty("properties").GetProperty(of);
        Assert.Equal(required.Order(), node.GetProperty("required").EnumerateArray().Select(item => item.GetString()!).Order());
    }
}
