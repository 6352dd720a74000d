using System.Text;
using static Toepan.Domain.Tests.Packages.Malformed.MalformedCase;

namespace Toepan.Domain.Tests.Packages.Malformed;

/// <summary>What the CSV files can be beside good ones.</summary>
internal static class MalformedSidecars
{
    private const string Points = "Static/points.csv";
    private const string Clearances = "Static/clearances.csv";
    private const string Findings = "Movie/findings.csv";
    private const string Wide = "Channel/wide.csv";
    private const string WideHead = "time,11PELV0000H3ACXP,11PELV0000H3ACYP\ns,g,g\n";

    public static IEnumerable<MalformedCase> All() => [.. PointsCases(), .. ClearanceCases(), .. FindingCases(), .. FilmCases(), .. WideCases()];

    private static IEnumerable<MalformedCase> PointsCases() =>
    [
        Refused("empty points", package => package.With(Points, ""), "E csv.empty Static/points.csv:1"),
        Refused("points in UTF-16", package => package.With(Points, [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(SamplePackage.Points)]), "E text.encoding Static/points.csv"),
        Refused("points without a column", package => package.Change(Points, "post_z", "past_z"), "E csv.missing-column Static/points.csv:1", "W csv.unknown-column Static/points.csv:1"),
        Refused("points with a column twice", package => package.Change(Points, "post_z", "post_y"), "E csv.missing-column Static/points.csv:1", "E csv.duplicate-column Static/points.csv:1"),
        Refused("row too short", package => package.Change(Points, ",98", ""), "E csv.field-count Static/points.csv:3"),
        Refused("row too long", package => package.Change(Points, ",98", ",98,1"), "E csv.field-count Static/points.csv:3"),
        Refused("coordinate that is a word", package => package.Change(Points, "2000.5", "far"), "E csv.number Static/points.csv:3"),
        Refused("coordinate NaN", package => package.Change(Points, "2000.5", "NaN"), "E csv.number Static/points.csv:3"),
        Refused("coordinate infinite", package => package.Change(Points, "2000.5", "1e999"), "E csv.number Static/points.csv:3"),
        Refused("coordinate on the moon", package => package.Change(Points, "2000.5", "3.8e11"), "E csv.number Static/points.csv:3"),
        Refused("quoted decimal comma", package => package.Change(Points, "2000.5", "\"2000,5\""), "E csv.number Static/points.csv:3"),
        Refused("decimal comma among commas", package => package.Change(Points, "2000.5", "2000,5"), "E csv.field-count Static/points.csv:3"),
        Refused("unknown role", package => package.Change(Points, "measured", "guessed"), "E csv.value Static/points.csv:3"),
        Refused("blank point", package => package.Change(Points, "wheel-hub", " "), "E csv.value Static/points.csv:3"),
        Refused("quote never closed", package => package.Change(Points, "wheel-hub", "\"wheel-hub"), "E csv.quote Static/points.csv:3"),
        Refused("text after a quote", package => package.Change(Points, "wheel-hub", "\"wheel\"-hub"), "E csv.quote Static/points.csv:3"),
        Refused("quote within a field", package => package.Change(Points, "wheel-hub", "wheel\"hub"), "E csv.quote Static/points.csv:3"),
        Refused("line of a megabyte in points", package => package.Change(Points, "wheel-hub", new string('w', 100) + Noise()), "E limit.line Static/points.csv:3"),
        Refused("points without end", package => package.With(Points, SamplePackage.Points + "\n" + string.Concat(Enumerable.Range(0, 20_001).Select(i => $"p{i},measured,{i},2,3,4,5,6\n"))), "E limit.rows Static/points.csv:20002"),
        Refused("two bad rows", package => package.Change(Points, "ref-1,reference,0", "ref-1,reference,x").Change(Points, "98", "y"), "E csv.number Static/points.csv:2", "E csv.number Static/points.csv:3"),
        Kept("point twice", package => package.With(Points, SamplePackage.Points + "\nref-1,reference,9,9,9,9,9,9\n"), "W points.twice Static/points.csv:4"),
        Kept("reference with a blank coordinate", package => package.Change(Points, "ref-1,reference,0,0,0", "ref-1,reference,0,,0"), "W points.blank Static/points.csv:2"),
        Kept("points by semicolon with decimal commas", package => package.With(Points, SamplePackage.Points.Replace(',', ';').Replace('.', ',')), "W csv.semicolon Static/points.csv:1", "W text.decimal-comma Static/points.csv:3"),
        Kept("unknown column", package => package.Change(Points, "point,", "surveyor,point,").Change(Points, "ref-1", "A,ref-1").Change(Points, "wheel-hub", "B,wheel-hub"), "W csv.unknown-column Static/points.csv:1"),
    ];

    private static IEnumerable<MalformedCase> ClearanceCases() =>
    [
        Refused("clearance without a distance", package => package.Change(Clearances, "120.5", ""), "E csv.number Static/clearances.csv:2"),
        Refused("negative clearance", package => package.Change(Clearances, "120.5", "-1"), "E csv.number Static/clearances.csv:2"),
        Refused("clearance of a word", package => package.Change(Clearances, "120.5", "wide"), "E csv.number Static/clearances.csv:2"),
        Refused("clearances without a column", package => package.Change(Clearances, ",distance", ",gap"), "E csv.missing-column Static/clearances.csv:1", "W csv.unknown-column Static/clearances.csv:1"),
        Refused("clearance to nothing", package => package.Change(Clearances, "wheel-hub", ""), "E csv.value Static/clearances.csv:2"),
        Kept("clearance twice", package => package.With(Clearances, SamplePackage.Clearances + "\nknee,wheel-hub,3\n"), "W clearances.twice Static/clearances.csv:3"),
        Kept("clearance to an unknown point", package => package.Change(Clearances, "wheel-hub", "sunroof"), "W clearances.unknown-point Static/clearances.csv:2"),
    ];

    private static IEnumerable<MalformedCase> FilmCases() =>
    [
        FilmCase("film that is not there", "lost.webm,1000,5\n", readable: true, "W films.unknown-file Movie/films.csv:2"),
        FilmCase("film given twice", "lost.webm,1000,5\nLOST.webm,500,5\n", readable: true, "W films.unknown-file Movie/films.csv:2", "W films.twice Movie/films.csv:3"),
        FilmCase("film without frames", "lost.webm,0,5\n", readable: false, "E csv.number Movie/films.csv:2"),
        FilmCase("film without a zero", "lost.webm,1000,\n", readable: false, "E csv.number Movie/films.csv:2"),
        FilmCase("film without a name", ",1000,5\n", readable: false, "E csv.value Movie/films.csv:2"),
    ];

    private static MalformedCase FilmCase(string name, string rows, bool readable, params string[] problems) =>
        new(name, () => new SamplePackage().With("Movie/films.csv", "file,frames_per_second,time_zero_frame\n" + rows).Zip(), readable, problems);

    private static IEnumerable<MalformedCase> FindingCases() =>
    [
        Refused("unknown severity", package => package.Change(Findings, "concern", "dreadful"), "E csv.value Movie/findings.csv:2"),
        Refused("blank severity", package => package.Change(Findings, ",note,by hand", ",,by hand"), "E csv.value Movie/findings.csv:3"),
        Refused("film time that is a word", package => package.Change(Findings, "61.5", "late"), "E csv.number Movie/findings.csv:2"),
        Refused("blank kind", package => package.Change(Findings, "door-jammed", ""), "E csv.value Movie/findings.csv:3"),
        Refused("findings without severity", package => package.Change(Findings, "severity", "weight"), "E csv.missing-column Movie/findings.csv:1", "W csv.unknown-column Movie/findings.csv:1"),
        Refused("note never closed", package => package.Change(Findings, "twice\"", "twice"), "E csv.quote Movie/findings.csv:2"),
        Refused("position that is no seat", package => package.Change(Findings, "severity,note", "severity,note,position").Change(Findings, "twice\"", "twice\",0").Change(Findings, "by hand", "by hand,"), "E csv.value Movie/findings.csv:2"),
        Kept("finding for an empty seat", package => package.Change(Findings, "severity,note", "severity,note,position").Change(Findings, "twice\"", "twice\",3").Change(Findings, "by hand", "by hand,"), "W findings.unknown-position Movie/findings.csv:2"),
        Kept("unknown kind", package => package.Change(Findings, "door-jammed", "roof-melted"), "W findings.unknown-kind Movie/findings.csv:3"),
        Kept("unknown region", package => package.Change(Findings, ",structure,", ",sunroof,"), "W findings.unknown-region Movie/findings.csv:3"),
        Kept("header only", package => package.With(Findings, "time_ms,camera,kind,region,severity,note\n")),
    ];

    private static IEnumerable<MalformedCase> WideCases() =>
    [
        WideCase("empty wide file", "", readable: false, "E csv.empty Channel/wide.csv:1"),
        WideCase("wide file without units", "time,11PELV0000H3ACXP\n", readable: false, "E csv.empty Channel/wide.csv:1"),
        WideCase("wide file with numbers for units", "time,11PELV0000H3ACXP\n0,1\n0.0001,2\n", readable: false, "E csv.no-units Channel/wide.csv:2"),
        WideCase("wide file without time", "11PELV0000H3ACXP,11PELV0000H3ACYP\ng,g\n1,2\n", readable: false, "E csv.missing-column Channel/wide.csv:1"),
        WideCase("wide file of time alone", "time\ns\n0\n", readable: false, "E csv.missing-column Channel/wide.csv:1"),
        WideCase("wide row too short", WideHead + "0,1,2\n0.0001,1\n", readable: false, "E csv.field-count Channel/wide.csv:4"),
        WideCase("wide row too long", WideHead + "0,1,2\n0.0001,1,2,3,4\n", readable: false, "E csv.field-count Channel/wide.csv:4"),
        WideCase("wide file with a stray quote", "time,\"11PELV0000H3ACXP\ns,g\n", readable: false, "E csv.quote Channel/wide.csv:1"),
        WideCase("wide file in UTF-16", "\uFEFFx\0", readable: false, "E text.encoding Channel/wide.csv"),
        WideCase("wide time in minutes", WideHead.Replace("s,g", "min,g", StringComparison.Ordinal) + "0,1,2\n0.0001,3,4\n", readable: true, "E csv.time-unit Channel/wide.csv:2"),
        WideCase("wide time not uniform", WideHead + "0,1,2\n0.0001,3,4\n0.0003,5,6\n", readable: true, "E channel.times-not-uniform Channel/wide.csv:4"),
        WideCase("wide time that is a word", WideHead + "0,1,2\nsoon,3,4\n", readable: true, "E channel.times-unusable Channel/wide.csv:4"),
        WideCase("wide file of one row", WideHead + "0,1,2\n", readable: true, "E channel.no-samples Channel/wide.csv"),
        WideCase("wide sample that is a word", WideHead + "0,1,2\n0.0001,3,x\n0.0002,NOVALUE,4\n", readable: true, "E channel.bad-sample Channel/wide.csv:5", "E channel.bad-sample Channel/wide.csv:4"),
        WideCase("wide channel without unit", WideHead.Replace("s,g,g", "s,,g", StringComparison.Ordinal) + "0,1,2\n0.0001,3,4\n", readable: true, "E channel.no-unit Channel/wide.csv:2"),
        WideCase("wide channel without code", WideHead.Replace("11PELV0000H3ACXP", "", StringComparison.Ordinal) + "0,1,2\n0.0001,3,4\n", readable: true, "E channel.no-code Channel/wide.csv:1"),
        WideCase("wide file by semicolon with decimal commas", WideHead.Replace(',', ';') + "0;1,5;2\n0,0001;3;4\n", readable: true, "W csv.semicolon Channel/wide.csv:1", "W text.decimal-comma Channel/wide.csv:3"),
    ];

    private static MalformedCase WideCase(string name, string text, bool readable, params string[] problems) =>
        new(name, () => new SamplePackage().With(Wide, text).Zip(), readable, problems);

    private static string Noise() => string.Concat(Enumerable.Range(0, 200_000).Select(i => (char)('a' + (i * 7919 % 26))));
}
