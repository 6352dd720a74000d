using System.IO.Compression;
using System.Text;
using Toepan.Domain.Packages;
using Xunit;
using static Toepan.Domain.Tests.Packages.SamplePackage;

namespace Toepan.Domain.Tests.Packages;

/// <summary>What is written reads back to the same package, every sample to the same bits.</summary>
public sealed class PackageWriterTests
{
    private const string File = "Channel/FO-0042.001";

    private static byte[] Write(TestPackage package, Func<Attachment, Stream>? attachment = null)
    {
        using var zip = new MemoryStream();
        PackageWriter.Write(zip, package, attachment);
        return zip.ToArray();
    }

    private static TestPackage Again(TestPackage package)
    {
        var reading = SamplePackage.Read(Write(package));
        Assert.NotNull(reading.Package);
        return reading.Package;
    }

    private static void Same(TestPackage expected, TestPackage actual)
    {
        Assert.Equivalent(expected.Programme with { Unknown = new Dictionary<string, System.Text.Json.JsonElement>() }, actual.Programme with { Unknown = new Dictionary<string, System.Text.Json.JsonElement>() }, strict: true);
        Assert.Equal(
            expected.Programme.Unknown.Select(pair => (pair.Key, pair.Value.GetRawText())).Order(),
            actual.Programme.Unknown.Select(pair => (pair.Key, pair.Value.GetRawText())).Order());
        Assert.Equal(Plain(expected.TestHeader), Plain(actual.TestHeader));
        Assert.Equal(Plain(expected.IndexHeader), Plain(actual.IndexHeader));
        Assert.Equal(expected.Points.Select(point => point with { Line = 0 }), actual.Points.Select(point => point with { Line = 0 }));
        Assert.Equal(expected.Clearances.Select(row => row with { Line = 0 }), actual.Clearances.Select(row => row with { Line = 0 }));
        Assert.Equal(expected.Findings.Select(row => row with { Line = 0 }), actual.Findings.Select(row => row with { Line = 0 }));
        Assert.Equal(expected.TopFolder, actual.TopFolder);
        Assert.Equal(expected.Channels.Count, actual.Channels.Count);
        Assert.All(expected.Channels.Zip(actual.Channels), pair => SameChannel(pair.First, pair.Second));
    }

    private static void SameChannel(RecordedChannel expected, RecordedChannel actual)
    {
        Assert.Equal(Plain(expected.Header), Plain(actual.Header));
        SameSignal(expected, actual);
        Assert.Equal((expected.File, expected.StatedCount, expected.UnfitReason), (actual.File, actual.StatedCount, actual.UnfitReason));
    }

    private static void SameSignal(RecordedChannel expected, RecordedChannel actual)
    {
        Assert.Equal((expected.Code, expected.Number, expected.Unit), (actual.Code, actual.Number, actual.Unit));
        Assert.Equal((expected.FirstSampleS, expected.IntervalS), (actual.FirstSampleS, actual.IntervalS));
        Assert.Equal((expected.AmplitudeClass, expected.HeaderFilterClass, expected.FirstBadSample), (actual.AmplitudeClass, actual.HeaderFilterClass, actual.FirstBadSample));
        Assert.Equal(Bits(expected), Bits(actual));
    }

    private static IEnumerable<long> Bits(RecordedChannel channel) => channel.Samples.ToArray().Select(BitConverter.DoubleToInt64Bits);

    private static IEnumerable<(string, string)> Plain(IEnumerable<HeaderEntry> header) => header.Select(entry => (entry.Key, entry.Value));

    /// <summary>Packages with every oddity that leaves them readable.</summary>
    public static TheoryData<string> Readable => [.. Malformed.MalformedProgrammes.All().Concat(Malformed.MalformedChannels.All()).Concat(Malformed.MalformedSidecars.All())
        .Where(item => item.Readable && !item.Name.StartsWith("wide", StringComparison.Ordinal)).Select(item => item.Name)];

    [Fact]
    public void Write_GoodPackage_ReadsBackTheSame()
    {
        var package = new SamplePackage().Read("FO-0042/").Package!;
        var reading = SamplePackage.Read(Write(package));
        Assert.Empty(reading.Problems);
        Same(package, reading.Package!);
    }

    [Theory]
    [MemberData(nameof(Readable))]
    public void Write_OddPackage_ReadsBackTheSame(string name)
    {
        var zip = Malformed.MalformedProgrammes.All().Concat(Malformed.MalformedChannels.All()).Concat(Malformed.MalformedSidecars.All()).Single(item => item.Name == name).Zip();
        var first = Again(SamplePackage.Read(zip).Package!);
        var second = Again(first);
        Same(first, second);
        Assert.All(SamplePackage.Read(zip).Package!.Channels.Zip(first.Channels), pair =>
        {
            Assert.Equal(pair.First.UnfitReason is null, pair.Second.UnfitReason is null);
            Assert.Equal(Bits(pair.First), Bits(pair.Second));
            Assert.Equal((pair.First.Code, pair.First.Unit, pair.First.FirstSampleS, pair.First.IntervalS), (pair.Second.Code, pair.Second.Unit, pair.Second.FirstSampleS, pair.Second.IntervalS));
        });
    }

    [Fact]
    public void Write_RandomDoubles_ReadBackBitForBit()
    {
        var random = new Random(42);
        var samples = new double[20_000];
        for (var i = 0; i < samples.Length; i++)
        {
            do
            {
                samples[i] = BitConverter.Int64BitsToDouble(random.NextInt64(long.MinValue, long.MaxValue));
            }
            while (!double.IsFinite(samples[i]));
        }

        (samples[0], samples[1], samples[2], samples[3]) = (-0.0, double.Epsilon, double.MaxValue, 1.0 / 3);
        var package = new SamplePackage().Read().Package!;
        var channel = package.Channels[0] with { Samples = samples, StatedCount = samples.Length };
        Assert.Equal(Bits(channel), Bits(Again(package with { Channels = [channel] }).Channels[0]));
    }

    [Fact]
    public void Write_WideCsvChannels_BecomeChannelFiles()
    {
        var package = new SamplePackage().Without(File, "Channel/FO-0042.002", "Channel/FO-0042.chn")
            .With("Channel/wide.csv", "time,11PELV0000H3ACXP,11PELV0000H3ACYP\nms,g,g\n-1,0.5,10\n-0.95,-0.25,2\n-0.9,4,3\n").Read().Package!;
        var reading = SamplePackage.Read(Write(package));
        Assert.Empty(reading.Problems);
        Assert.Equal(["Channel/FO-0042.001", "Channel/FO-0042.002"], reading.Package!.Channels.Select(channel => channel.File));
        Assert.All(package.Channels.Zip(reading.Package.Channels), pair => SameSignal(pair.First, pair.Second));
    }

    [Fact]
    public void Write_WideBesideFilesAndDoubledNumbers_KeepsEveryChannel()
    {
        var package = new SamplePackage().With("Channel/other.001", Channel("11CHST0000H3ACXP", "7\n8\n9\n10\n"))
            .With("Channel/wide.csv", "time,11PELV0000H3ACXP\ns,g\n0,1\n0.0001,2\n").Read().Package!;
        var again = Again(package);
        Assert.Equal(package.Channels.Select(channel => channel.Code).Order(), again.Channels.Select(channel => channel.Code).Order());
        Assert.Equal([1, 1, 2, 3], again.Channels.Select(channel => channel.Number));
    }

    [Fact]
    public void Write_ChangedFigures_WinOverTheRecordedHeader()
    {
        var package = new SamplePackage().Read().Package!;
        var changed = package.Channels[0] with { Unit = "g", IntervalS = 0.00005, FirstSampleS = -0.02, AmplitudeClass = null, HeaderFilterClass = "600", Code = "11HEAD0000HFACXP" };
        var again = Again(package with { Channels = [changed, package.Channels[1]] }).Channels[0];
        SameSignal(changed, again);
    }

    [Fact]
    public void Write_ExplicitTimes_StayExplicit()
    {
        var package = new SamplePackage().Without("Channel/FO-0042.chn")
            .Change(File, ":implicit\n", ":explicit\nReference channel name      :10VEHC0000H3TI00\n").Change(File, ":0.0001", ":NOVALUE").Change(File, ":-0.01", ":NOVALUE")
            .With("Channel/FO-0042.002", Channel("10VEHC0000H3TI00", "0 0.0001 0.0002 0.0003\n", "s", "NOVALUE", "NOVALUE")).Read().Package!;
        Assert.All(package.Channels.Zip(Again(package).Channels), pair => SameChannel(pair.First, pair.Second));
        var alone = Again(package with { Channels = [package.Channels[0]] }).Channels[0];
        Assert.Equal((0.0, 0.0001, null), (alone.FirstSampleS, alone.IntervalS, alone.UnfitReason));
    }

    [Theory]
    [InlineData("plain")]
    [InlineData("Göttin")]
    [InlineData("Ã© looks like UTF-8")]
    [InlineData("Ω, 東京, 😀")]
    [InlineData("\u0080\u009F")]
    [InlineData("\uFEFFmark")]
    public void Write_TextOfAnyAlphabet_ReadsBackTheSame(string text)
    {
        var package = new SamplePackage().Read().Package!;
        var channel = package.Channels[0];
        var odd = package with
        {
            TestHeader = [new("Customer name", text, 1)],
            Channels = [channel with { Header = [.. channel.Header, new HeaderEntry("Comments", text, 12)] }, package.Channels[1]],
            Findings = [package.Findings[0] with { Note = text }],
        };
        var again = Again(odd);
        Assert.Equal([text, text, text], [again.TestHeader[0].Value, again.Channels[0].Header[^1].Value, again.Findings[0].Note]);
    }

    [Theory]
    [MemberData(nameof(ReaderHostileTests.Nasty), MemberType = typeof(ReaderHostileTests))]
    [InlineData("line\nline\r\nline\rline")]
    [InlineData("a,b;c\"d")]
    [InlineData("nul\0nul")]
    [InlineData("half \uD800 pair")]
    public void Write_NastyTextInEveryFreeField_IsAccepted(string text)
    {
        var package = new SamplePackage().Read().Package!;
        var channel = package.Channels[0];
        var odd = package with
        {
            Programme = package.Programme with
            {
                Laboratory = text,
                Vehicle = package.Programme.Vehicle with { Make = text, Model = text },
                Occupants = [package.Programme.Occupants[0] with { Seat = text }],
            },
            TestHeader = [new("Comments", text, 1), new(text, "x", 2)],
            IndexHeader = [new("Comments", text, 1)],
            Channels = [channel with { Header = [new HeaderEntry("Comments", text, 1), .. channel.Header] }, package.Channels[1]],
            Findings = [package.Findings[0] with { Note = text, Camera = text }],
            Points = [package.Points[0] with { Name = text.ToLowerInvariant() }, package.Points[1]],
        };
        var reading = SamplePackage.Read(Write(odd));
        Assert.DoesNotContain(reading.Problems, problem => problem.Severity == ProblemSeverity.Error);
        Assert.Equal(Bits(channel), Bits(reading.Package!.Channels[0]));
        if (text.IndexOfAny(['\r', '\n', '\0', '\uD800']) < 0)
        {
            Assert.Equal((text, text), (reading.Package.Findings[0].Note, reading.Package.Findings[0].Camera));
            Assert.Equal(text, reading.Package.Programme.Laboratory);
        }
    }

    [Fact]
    public void Write_NoteOfSeveralLines_KeepsThem()
    {
        var package = new SamplePackage().Read().Package!;
        var odd = package with { Findings = [package.Findings[0] with { Note = "first\nsecond\r\nthird" }] };
        Assert.Equal("first\nsecond\r\nthird", Again(odd).Findings[0].Note);
    }

    [Fact]
    public void Write_SamePackage_GivesTheSameBytes()
    {
        var package = new SamplePackage().Read().Package!;
        Assert.Equal(Write(package), Write(package));
    }

    [Fact]
    public void Write_DeadChannels_StayWithinTheReadersRatio()
    {
        var package = new SamplePackage().Read().Package!;
        var dead = Enumerable.Range(1, 120).Select(i => package.Channels[0] with { Number = i, File = $"Channel/FO-0042.{i:D3}", Samples = new double[20_000], StatedCount = 20_000 });
        var reading = SamplePackage.Read(Write(package with { Channels = [.. dead] }));
        Assert.Equal(120, reading.Package!.Channels.Count);
    }

    [Fact]
    public void Write_Attachments_AreCarriedOver()
    {
        var package = new SamplePackage().Read().Package!;
        var zip = Write(package, attachment => new MemoryStream(new SamplePackage().Files[attachment.Path]));
        Assert.Equal(package.Attachments, SamplePackage.Read(zip).Package!.Attachments);
        Assert.Empty(SamplePackage.Read(Write(package)).Package!.Attachments);
    }

    [Fact]
    public void Write_AttachmentsOfAnAcceptedArchive_AreTheSameBytes()
    {
        // 0x81 is ü in code page 437, what a name without the UTF-8 flag is in.
        byte[] name = [.. "FO-0042/Photo/T"u8, 0x81, .. "r.jpg"u8];
        var files = new SamplePackage().Files.Select(file => new RawEntry("FO-0042/" + file.Key, file.Value));
        var zip = RawZip.Of([.. files, new RawEntry(name, [9, 8, 7])]);
        var package = SamplePackage.Read(zip).Package!;
        Assert.Equal(["Photo/Tür.jpg", "Photo/a.jpg"], package.Attachments.Select(attachment => attachment.Path));
        var again = new PackageAttachments(new MemoryStream(Write(package, new PackageAttachments(new MemoryStream(zip)).Open)));
        using var content = new MemoryStream();
        again.Open(package.Attachments[0]).CopyTo(content);
        Assert.Equal([9, 8, 7], content.ToArray());
    }

    [Fact]
    public void Write_TextFiles_AreCrLfAndPadded()
    {
        using var zip = new ZipArchive(new MemoryStream(Write(new SamplePackage().Read().Package!)));
        using var reader = new StreamReader(zip.GetEntry(File)!.Open(), Encoding.Latin1);
        var text = reader.ReadToEnd();
        Assert.StartsWith("Test object number          :1\r\n", text, StringComparison.Ordinal);
        Assert.EndsWith("\r\n0.5\r\n-1.25\r\n300\r\n4\r\n", text, StringComparison.Ordinal);
        Assert.Equal(
            ["programme.json", "FO-0042.mme", "Channel/FO-0042.chn", "Channel/FO-0042.001", "Channel/FO-0042.002", "Static/points.csv", "Static/clearances.csv", "Movie/findings.csv"],
            zip.Entries.Select(entry => entry.FullName));
    }
}
