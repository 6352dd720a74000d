using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Toepan.Domain.Measures;
using Xunit;

namespace Toepan.Domain.Tests.Measures;

public sealed partial class MeasureCatalogueTests
{
    // The measures edition 1 promises, with their units, written down apart from the catalogue.
    private static readonly string[] Promised =
    [
        "head.hic15 ", "head.hic36 ", "head.a3ms g", "head.peak g",
        "neck.tension kN", "neck.compression kN", "neck.shear kN", "neck.flexion N·m", "neck.extension N·m", "neck.nij ",
        "chest.a3ms g", "chest.deflection mm", "chest.viscous m/s", "pelvis.a3ms g",
        "femur.left.compression kN", "femur.right.compression kN", "knee.left.slide mm", "knee.right.slide mm",
        "tibia.left.upper.index ", "tibia.left.lower.index ", "tibia.right.upper.index ", "tibia.right.lower.index ",
        "tibia.left.compression kN", "tibia.right.compression kN", "foot.left.a3ms g", "foot.right.a3ms g",
        "vehicle.deltav km/h", "vehicle.peak g", "vehicle.stroke mm", "vehicle.crush.static mm", "vehicle.olc g",
        "structure.<point>.rearward mm", "structure.<point>.lateral mm", "structure.<point>.upward mm", "structure.<point>.resultant mm",
        "structure.footwell.rearward mm", "structure.opening.closure mm", "structure.alignment.rms mm",
        "clearance.<name>.residual mm", "clearance.<name>.residual.smaller mm",
        "risk.head probability", "risk.neck probability", "risk.chest probability", "risk.thigh.left probability", "risk.thigh.right probability",
        "risk.lowerleg.left probability", "risk.lowerleg.right probability", "risk.joint probability",
        "conduct.speed km/h", "conduct.energyratio ",
    ];

    [Fact]
    public void Entries_HoldEveryPromisedMeasureWithItsUnit() =>
        Assert.Equal(Promised.Order(StringComparer.Ordinal), MeasureCatalogue.Entries.Select(entry => $"{entry.Code} {entry.Unit}").Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("structure.wheel-hub.rearward", "structure.<point>.rearward")]
    [InlineData("structure.footwell.rearward", "structure.footwell.rearward")]
    [InlineData("structure.footwell-upper-inner.rearward", "structure.<point>.rearward")]
    [InlineData("clearance.knee.residual", "clearance.<name>.residual")]
    [InlineData("clearance.knee.residual.smaller", "clearance.<name>.residual.smaller")]
    public void Find_CodeWithAName_IsItsPattern(string code, string pattern) => Assert.Equal(pattern, MeasureCatalogue.Find(code)?.Code);

    [Theory]
    [InlineData("head.hic16")]
    [InlineData("structure.wheel-hub.sideways")]
    [InlineData("")]
    public void Find_UnknownCode_IsNull(string code)
    {
        Assert.Null(MeasureCatalogue.Find(code));
        Assert.Null(MeasureCatalogue.Help(code));
        Assert.Throws<KeyNotFoundException>(() => MeasureCatalogue.Get(code));
    }

    [Fact]
    public void Help_EveryMeasure_HasSummaryFormulaSourceAndConfidence() => Assert.All(MeasureCatalogue.Entries, entry =>
    {
        var help = MeasureCatalogue.Help(entry.Code);
        Assert.NotNull(help);
        Assert.Equal(entry, help.Entry);
        Assert.NotEmpty(help.Summary);
        var labels = help.Notes.Select(note => note.Label).ToList();
        Assert.Equal(MeasureCatalogueWriter.Paragraphs.Select(paragraph => paragraph.Label), labels);
        Assert.All(help.Notes, note => Assert.NotEmpty(note.Text));
    });

    [Fact]
    public void Help_LimitedMeasure_NamesLimitByDummyAndSource()
    {
        Assert.Equal("H3 4.17 kN, HF 2.62 kN: [fmvss208] S6.6, S15.3.6", MeasureCatalogue.Help("neck.tension")?.Limit);
        Assert.Null(MeasureCatalogue.Help("neck.shear")?.Limit);
    }

    // Generated twice from the same comments it must be the page that is committed and embedded.
    [Fact]
    public void Formulas_AreThoseOfTheDocComments()
    {
        using var documentation = File.OpenRead(Path.ChangeExtension(typeof(MeasureCatalogue).Assembly.Location, ".xml"));
        var page = MeasureCatalogueWriter.Write(documentation, MeasureCatalogueLimits.OfDefaultScheme());

        Assert.True(page == MeasureCatalogueBook.EmbeddedText().ReplaceLineEndings("\n"), "docs/formulas.md is stale: dotnet run docs/formulas.cs");
    }

    [Fact]
    public void Files_NamedInTheCatalogue_Exist() =>
        Assert.All(MeasureCatalogue.Entries, entry => Assert.True(File.Exists(Path.Combine(Root(), entry.File)), entry.File));

    // Every key in brackets, in code, data and pages, is an entry of docs/sources.md.
    [Fact]
    public void SourceKeys_AllStandInTheBibliography()
    {
        var known = BibliographyEntry().Matches(File.ReadAllText(Path.Combine(Root(), "docs", "sources.md"))).Select(match => match.Groups["key"].Value).ToList();
        var used = SourceFiles().SelectMany(file => SourceKey().Matches(File.ReadAllText(file)).Select(match => match.Groups["key"].Value)).ToHashSet();

        Assert.Equal(known.Distinct(), known);
        Assert.Empty(used.Except(known));
        Assert.True(used.Count > 10);
    }

    private static IEnumerable<string> SourceFiles()
    {
        var separator = Path.DirectorySeparatorChar;
        return Directory.EnumerateFiles(Path.Combine(Root(), "src", "Domain"), "*", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{separator}obj{separator}", StringComparison.Ordinal) && !file.Contains($"{separator}bin{separator}", StringComparison.Ordinal))
            .Where(file => file.EndsWith(".cs", StringComparison.Ordinal) || file.EndsWith(".json", StringComparison.Ordinal))
            .Append(Path.Combine(Root(), "docs", "formulas.md"));
    }

    private static string Root([CallerFilePath] string path = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(path)!, "..", "..", ".."));

    // A key has letters and digits, begins small and is no index expression: [fmvss208], [j211-1], [73fr40016], [olc].
    [GeneratedRegex(@"(?<![\w\)\]\""\?])\[(?<key>(?=[a-z0-9-]*[0-9])(?=[a-z0-9-]*[a-z])[a-z0-9]{2,}(?:-[a-z0-9]+)*|olc)\]")]
    private static partial Regex SourceKey();

    [GeneratedRegex(@"^- \*\*\[(?<key>[a-z0-9-]+)\]\*\*", RegexOptions.Multiline)]
    private static partial Regex BibliographyEntry();
}
