using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Toepan.Api.Tests.Packages;
using Toepan.Domain.Sheets;

namespace Toepan.Api.Tests.Sheets;

/// <summary>Sheets of demo runs as a reader and as a script meet them.</summary>
[Collection(ProgrammeReaders.Name)]
public sealed partial class SheetDocumentRouteTests(SharedProgramme programme)
{
    private const int MostWords = 350;

    public static TheoryData<string> Runs => ["FO-0001", "FO-0002", "FO-0003", "FO-0005", "FO-0006", "FO-0008", "FO-0023"];

    [Theory]
    [MemberData(nameof(Runs))]
    public async Task Document_EveryLanguage_IsShortBeforeTheMethod(string test)
    {
        var document = await Document(test);

        foreach (var text in document.Texts)
        {
            string[] headings = [.. new[] { "kicker", "space", "space.caption", "people", "inspection", "holds", "peers", "not" }.Select(text.Label)];
            string[] regions = [.. text.Regions.Select(region => $"{region.Title} {region.Level}")];
            string[] peers = document.Peers is { } known ? [.. known.In(text.Language).Sentences.Select(sentence => sentence.Text)] : [];
            var words = string.Join(" ", [document.Vehicle.Name, text.Level, .. headings, .. regions, .. peers, .. text.BeforeMethod().Select(sentence => sentence.Text)])
                // A number and its unit, kept together by a no-break space, are one word.
                .Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;
            Assert.True(words <= MostWords, $"{test} {text.Language}: {words} words");
        }
    }

    // Grade = 0.39 words a sentence + 11.8 syllables a word − 15.59; Kincaid, Fishburne, Rogers and Chissom, Research Branch Report 8-75 (1975), from memory.
    // Syllables are counted as groups of vowels, a final silent e left out. Grade 7 is read at about 12.
    [Theory]
    [MemberData(nameof(Runs))]
    public async Task Document_English_IsReadAtAboutTwelve(string test)
    {
        string[] sentences = [.. (await Document(test)).In("en").BeforeMethod().Select(sentence => sentence.Text).Where(text => text.EndsWith('.'))];
        var count = sentences.Sum(text => Math.Max(1, SentenceEnds().Count(text)));
        string[] words = [.. sentences.SelectMany(text => Words().Matches(text).Select(match => match.Value))];
        var grade = (0.39 * words.Length / count) + (11.8 * words.Sum(Syllables) / words.Length) - 15.59;

        Assert.InRange(grade, 2, 7.5);
    }

    // The measures as their own route gives them are the other side of the comparison.
    [Theory]
    [MemberData(nameof(Runs))]
    public async Task Document_FigureOfAMeasure_IsTheStoredMeasure(string test)
    {
        var document = await Document(test);
        using var measures = JsonDocument.Parse(await programme.Lab.GetStringAsync($"/api/v1/tests/{test}/measures", TestContext.Current.CancellationToken));
        var bound = document.Texts.SelectMany(text => text.All()).SelectMany(sentence => sentence.Spans).Select(span => document.Figure(span.Figure)!)
            .Where(figure => figure.Kind is SheetFigureKind.Measure or SheetFigureKind.Risk).DistinctBy(figure => figure.Name).ToList();

        Assert.NotEmpty(bound);
        Assert.All(bound, figure => Assert.Contains(measures.RootElement.EnumerateArray(), measure =>
            measure.GetProperty("code").GetString() == figure.Code && measure.GetProperty("value").ValueKind == JsonValueKind.Number
            && measure.GetProperty("value").GetDouble() == figure.Value));
    }

    [Fact]
    public async Task Document_AskedTwice_HasTheSameHashAndBytes()
    {
        using var first = await programme.Lab.GetAsync("/api/v1/tests/FO-0002/sheet/document", TestContext.Current.CancellationToken);
        var bytes = await first.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);

        Assert.Equal(bytes, await programme.Lab.GetByteArrayAsync("/api/v1/tests/FO-0002/sheet/document", TestContext.Current.CancellationToken));
        Assert.Equal(SheetDocumentJson.Hash(SheetDocumentJson.Read(bytes)), first.Headers.GetValues("X-Sheet-Hash").Single());
    }

    // Star characters (by code point), single letters in quotation as grades, and fixed colours of any kind: a sheet has one hue, and it comes from the style.
    [Theory]
    [InlineData("en")]
    [InlineData("de")]
    public async Task Page_Markup_HasNoStarsNoGradesAndNoFixedColours(string language)
    {
        var page = await programme.Lab.GetStringAsync($"/sheets/preview/FO-0002?lang={language}", TestContext.Current.CancellationToken);
        var start = page.IndexOf("<article class=\"sheet\"", StringComparison.Ordinal);
        Assert.True(start >= 0);
        var sheet = page[start..page.IndexOf("</article>", start, StringComparison.Ordinal)];

        Assert.DoesNotMatch("[\u2605\u2606\u269D\u2B50\u2B51\u2729-\u2735\u272A-\u2736]|&#9733;|&#x2605;|\uD83C\uDF1F", sheet);
        Assert.DoesNotMatch(@"(?i)\b(red|green|amber|yellow)\b|#[0-9a-f]{3,8}\b|rgb\(|hsl\(|\bstars?\b|\bgrade\b", Regex.Replace(sheet, "href=\"[^\"]*\"", ""));
        Assert.DoesNotMatch(@">\s*[A-F][+\-]?\s*<", sheet);
        Assert.DoesNotContain("<script", sheet, StringComparison.OrdinalIgnoreCase);
        Assert.Contains($"lang=\"{language}\"", sheet, StringComparison.Ordinal);
    }

    private static int Syllables(string word)
    {
        var lower = word.ToLower(CultureInfo.InvariantCulture);
        var groups = Vowels().Count(lower);
        return Math.Max(1, lower.EndsWith('e') && !lower.EndsWith("le", StringComparison.Ordinal) ? groups - 1 : groups);
    }

    private async Task<SheetDocument> Document(string test) =>
        SheetDocumentJson.Read(await programme.Lab.GetByteArrayAsync($"/api/v1/tests/{test}/sheet/document", TestContext.Current.CancellationToken));

    [GeneratedRegex(@"[.!?](\s|$)")]
    private static partial Regex SentenceEnds();

    [GeneratedRegex("[A-Za-z']+")]
    private static partial Regex Words();

    [GeneratedRegex("[aeiouy]+")]
    private static partial Regex Vowels();
}
