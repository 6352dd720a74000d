using System.Text;
using Toepan.Demo.Packages;
using Toepan.Demo.Scenario;
using Toepan.Domain.Packages;

namespace Toepan.Api.Tests.Embargo;

/// <summary>Packages of the demo programme with a mark in every text they can carry and in every file beside it.</summary>
internal static class PlantedPackage
{
    private const int Seed = 1;

    /// <param name="marks">The marks.</param>
    /// <param name="run">Number of the demo run it is made from.</param>
    /// <param name="test">Its test code.</param>
    public static byte[] Zip(Marks marks, int run, string test)
    {
        var package = PackageBuilder.Build(NorthmoorProgramme.Runs.Single(one => one.Number == run), Seed);
        Dictionary<string, byte[]> files = new()
        {
            [$"Photo/{marks.In("photo")}.jpg"] = PlantedPhotograph.With(marks.In("exif")),
            [$"Movie/{marks.In("film")}.mp4"] = Film(marks.In("film")),
            [$"Document/{marks.In("document")}.txt"] = Encoding.UTF8.GetBytes(marks.In("document")),
        };
        using var zip = new MemoryStream();
        PackageWriter.Write(zip, Marked(package, marks, test, files), attachment => new MemoryStream(files[attachment.Path]));
        return zip.ToArray();
    }

    /// <summary>A film of no frames (ISO/IEC 14496-12: a file type box and a free space box) that holds a mark.</summary>
    public static byte[] Film(string mark)
    {
        var text = Encoding.ASCII.GetBytes(mark);
        return [0, 0, 0, 16, .. "ftypisom\0\0\0\0"u8, 0, 0, 0, (byte)(8 + text.Length), .. "free"u8, .. text];
    }

    private static TestPackage Marked(TestPackage package, Marks marks, string test, Dictionary<string, byte[]> files) => package with
    {
        Programme = package.Programme with
        {
            Test = test, RepeatOf = null, Laboratory = marks.In("laboratory"),
            Vehicle = package.Programme.Vehicle with { Key = marks.In("vehicle"), Make = marks.In("make"), Model = marks.In("model"), Class = marks.In("class") },
        },
        TestHeader = [.. package.TestHeader.Select(entry => entry with { Value = Header(entry, marks, test) })],
        Channels = [.. package.Channels.Select(channel => channel with { Header = [.. channel.Header, new HeaderEntry("Comments", marks.In("channel"), 0)] })],
        Clearances = [.. package.Clearances, new Clearance(marks.In("clearance"), package.Points[0].Name, 210, 99)],
        Points = [.. package.Points, package.Points[^1] with { Name = marks.In("point") }],
        Findings =
        [
            .. package.Findings.Select(finding => finding with { Note = $"{finding.Note} {marks.In("finding")}", Camera = marks.In("camera") }),
            new Finding(60, marks.In("camera"), "column-detached", "vehicle", FindingSeverity.Note, marks.In("finding"), null, 99),
        ],
        Attachments = [.. files.Select(file => new Attachment(file.Key, file.Value.Length))],
    };

    private static string Header(HeaderEntry entry, Marks marks, string test) => entry.Key switch
    {
        "Laboratory test ref. number" => test,
        "Title" or "Laboratory name" or "Name of test object 1" => marks.In("header"),
        _ => entry.Value,
    };
}
