using System.Globalization;
using System.Text;
using Toepan.Domain.Packages;
using Xunit;

namespace Toepan.Domain.Tests.Packages;

/// <summary>
/// A small good package written by hand, whose files a test changes one at a time. Two channels of four samples, a few points, a clearance, two
/// findings, a photograph. All names are invented.
/// </summary>
internal sealed class SamplePackage
{
    public const string Json = """
        { "test": "FO-0042", "procedure": "offset-frontal-64", "date": "2031-03-14",
          "laboratory": "Hall 2", "repeatOf": null,
          "vehicle": { "key": "tarnbrook-voyle-2031", "make": "Tarnbrook", "model": "Voyle",
                       "modelYears": [2030, 2032], "class": "delivery-van", "kerbMassKg": 1690 },
          "conduct": { "impactSpeedKmh": [64.31, 64.35], "overlapPercent": 40.3,
                       "testMassKg": 1834.5, "declaredTestMassKg": 1840,
                       "dummyTemperatureC": [21.3, 21.4],
                       "impactAngleDeg": 0.2, "verticalAlignmentMm": 6 },
          "occupants": [ { "position": 1, "seat": "driver", "dummy": "H3" } ],
          "structure": { "unit": "mm",
                         "axes": { "x": "forward", "y": "right", "z": "down" } } }
        """;

    public const string TestHeader = """
        Data format edition number  :1.6
        Laboratory name             :Hall 2
        Laboratory test ref. number :FO-0042
        Comments                    :first
        Comments                    :second
        """;

    public const string Index = """
        Instrumentation standard    :SAE J211
        Number of channels          :2
        Name of channel 001         :11HEAD0000H3ACXP / Head x
        Name of channel 002         :11HEAD0000H3ACYP / Head y
        """;

    public const string Points = """
        point,role,pre_x,pre_y,pre_z,post_x,post_y,post_z
        ref-1,reference,0,0,0,10,0,0
        wheel-hub,measured,2000.5,-700,100,1950.25,-695,98
        """;

    public const string Clearances = """
        clearance,opposing_point,distance
        knee,wheel-hub,120.5
        """;

    public const string Findings = """
        time_ms,camera,kind,region,severity,note
        61.5,C3,head-strike,head,concern,"brushed the rim, twice"
        ,,door-jammed,structure,note,by hand
        """;

    public static KnownProgramme Known { get; } = new(new HashSet<string> { "offset-frontal-64" }, new HashSet<string> { "delivery-van" });

    private readonly Dictionary<string, byte[]> files = [];

    public SamplePackage()
    {
        With("programme.json", Json).With("FO-0042.mme", Lines(TestHeader)).With("Channel/FO-0042.chn", Lines(Index));
        With("Channel/FO-0042.001", Channel("11HEAD0000H3ACXP")).With("Channel/FO-0042.002", Channel("11HEAD0000H3ACYP"));
        With("Static/points.csv", Points).With("Static/clearances.csv", Clearances).With("Movie/findings.csv", Findings);
        With("Photo/a.jpg", [0xFF, 0xD8, 0xFF, 1, 2, 3]);
    }

    public IReadOnlyDictionary<string, byte[]> Files => files;

    public SamplePackage With(string name, byte[] content)
    {
        files[name] = content;
        return this;
    }

    public SamplePackage With(string name, string content) => With(name, Encoding.UTF8.GetBytes(content));

    public SamplePackage Without(params string[] names)
    {
        foreach (var name in names)
        {
            Assert.True(files.Remove(name), $"the sample has no {name}");
        }

        return this;
    }

    /// <summary>Replaces text in a file; the text must be there.</summary>
    public SamplePackage Change(string name, string from, string to)
    {
        var text = Encoding.UTF8.GetString(files[name]);
        Assert.Contains(from, text, StringComparison.Ordinal);
        return With(name, text.Replace(from, to, StringComparison.Ordinal));
    }

    public byte[] Zip(string topFolder = "") =>
        RawZip.Of([.. files.Select(file => new RawEntry(topFolder + file.Key, file.Value))]);

    public PackageReading Read(string topFolder = "", PackageLimits? limits = null) => Read(Zip(topFolder), limits);

    public static PackageReading Read(byte[] zip, PackageLimits? limits = null) =>
        PackageReader.Read(new MemoryStream(zip), Known, limits ?? PackageLimits.Default, TestContext.Current.CancellationToken);

    /// <summary>A channel file with a full header; sample lines as given.</summary>
    public static string Channel(string code, string samples = "0.5\n-1.25\n3e2\n4\n", string unit = "m/(s*s)", string interval = "0.0001", string first = "-0.01", int count = 4) =>
        string.Create(CultureInfo.InvariantCulture, $"""
        Test object number          :1
        Name of the channel         :Head
        Channel code                :{code}
        Unit                        :{unit}
        Channel frequency class     :1000
        Channel amplitude class     :4905
        Sampling interval           :{interval}
        Time of first sample        :{first}
        Number of samples           :{count}
        Reference channel           :implicit

        """) + samples;

    /// <summary>A name as a problem shows it: control characters replaced.</summary>
    public static string Shown(string name) => string.Concat(name.Select(c => char.IsControl(c) ? '\uFFFD' : c));

    /// <summary>The text with CR LF, as the format asks.</summary>
    public static string Lines(string text) => text.ReplaceLineEndings("\r\n") + "\r\n";
}
