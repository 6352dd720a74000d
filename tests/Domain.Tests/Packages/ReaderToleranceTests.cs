using System.Text;
using Toepan.Domain.Packages;
using Xunit;
using static Toepan.Domain.Tests.Packages.SamplePackage;

namespace Toepan.Domain.Tests.Packages;

/// <summary>ISO/TS 13499 as laboratories write it (format from memory): each way reads to the same channel, with the problem it deserves.</summary>
public sealed class ReaderToleranceTests
{
    private const string Code = "11HEAD0000H3ACXP";
    private const string File = "Channel/FO-0042.001";
    private static readonly double[] Samples = [0.5, -1.25, 300, 4];

    private static (RecordedChannel Channel, IReadOnlyList<Problem> Problems) First(SamplePackage package)
    {
        var reading = package.Read();
        Assert.NotNull(reading.Package);
        return (reading.Package.Channels[0], reading.Problems);
    }

    private static void IsTheSample(RecordedChannel channel)
    {
        Assert.Equal(Code, channel.Code);
        Assert.Equal(Samples, channel.Samples.ToArray());
        Assert.Equal((-0.01, 0.0001, "m/(s*s)"), (channel.FirstSampleS, channel.IntervalS, channel.Unit));
        Assert.Null(channel.UnfitReason);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Read_LineEnds_AllEndALine(string lineEnd)
    {
        var (channel, problems) = First(new SamplePackage().With(File, Channel(Code).ReplaceLineEndings(lineEnd)));
        Assert.Empty(problems);
        IsTheSample(channel);
        Assert.Equal(11, channel.FirstSampleLine);
    }

    [Fact]
    public void Read_NoFinalLineEnd_KeepsTheLastSample()
    {
        var (channel, problems) = First(new SamplePackage().With(File, Channel(Code).TrimEnd()));
        Assert.Empty(problems);
        IsTheSample(channel);
    }

    [Fact]
    public void Read_KeysUnpaddedReorderedAndInAnyCase_AreFound()
    {
        var (channel, problems) = First(new SamplePackage().With(
            File, "number of samples:4\nTIME OF FIRST SAMPLE : -0.01\n  Unit\t:m/(s*s)\nChannel  code:" + Code + "\nSampling interval:1E-4\n0.5\n-1.25\n3e2\n4\n"));
        Assert.Empty(problems);
        IsTheSample(channel);
    }

    [Fact]
    public void Read_UnknownKeysAndRepeatedComments_AreKeptInOrder()
    {
        var (channel, _) = First(new SamplePackage().Change(File, "Unit  ", "Comments :one\nComments :two\nWeather on the day :dry: very\nUnit  "));
        Assert.Equal(
            [new("Comments", "one", 4), new("Comments", "two", 5), new("Weather on the day", "dry: very", 6)],
            channel.Header.Skip(3).Take(3));
    }

    [Fact]
    public void Read_SeveralSamplesALine_AreTakenInOrder()
    {
        var (channel, problems) = First(new SamplePackage().With(File, Channel(Code, "  0.5\t-1.25;3e2\n 4 \n")));
        Assert.Empty(problems);
        IsTheSample(channel);
    }

    [Theory]
    [InlineData("0.50000", "-1.25E0", "3.0E+2", "+4.")]
    [InlineData(".5", "-125e-2", "300.000", "4e0")]
    public void Read_WaysToWriteANumber_AreTheSameNumber(params string[] written)
    {
        var (channel, problems) = First(new SamplePackage().With(File, Channel(Code, string.Join('\n', written))));
        Assert.Empty(problems);
        IsTheSample(channel);
    }

    [Fact]
    public void Read_RandomDecimals_AreTheNearestDoubles()
    {
        // Second opinion: the runtime's own parser (IEEE 754 correct since .NET Core 3.0).
        var random = new Random(13499);
        var texts = Enumerable.Range(0, 50_000).Select(_ => Decimal(random)).ToArray();
        var (channel, _) = First(new SamplePackage().With(File, Channel(Code, string.Join('\n', texts) + "\n", count: texts.Length)));
        Assert.Equal(
            texts.Select(text => BitConverter.DoubleToInt64Bits(double.Parse(text, System.Globalization.CultureInfo.InvariantCulture))),
            channel.Samples.ToArray().Select(BitConverter.DoubleToInt64Bits));
    }

    private static string Decimal(Random random)
    {
        var digits = string.Concat(Enumerable.Range(0, random.Next(1, 20)).Select(_ => (char)('0' + random.Next(10))));
        var point = random.Next(digits.Length + 1);
        var sign = random.Next(3) switch { 0 => "-", 1 => "+", _ => "" };
        return sign + (random.Next(4) == 0 ? digits : digits[..point] + "." + digits[point..]);
    }

    [Fact]
    public void Read_DecimalCommas_AreReadAndToldOnceAFile()
    {
        var (channel, problems) = First(new SamplePackage().With(File, Channel(Code, "0,5\n-1,25\n3,0e2\n4,0\n")));
        IsTheSample(channel);
        var problem = Assert.Single(problems);
        Assert.Equal((ProblemCodes.DecimalComma, ProblemSeverity.Warning, File, 11), (problem.Code, problem.Severity, problem.File, problem.Line));
    }

    [Fact]
    public void Read_LowerCaseCode_IsRaisedAndTold()
    {
        var (channel, problems) = First(new SamplePackage().Change(File, Code, Code.ToLowerInvariant()));
        IsTheSample(channel);
        Assert.Equal([(ProblemCodes.CodeCase, ProblemSeverity.Note)], problems.Select(problem => (problem.Code, problem.Severity)));
    }

    [Fact]
    public void Read_NamesInOtherCase_AreFound()
    {
        var files = new SamplePackage().Files;
        var reading = SamplePackage.Read(RawZip.Of([.. files.Select(file => new RawEntry(file.Key.ToLowerInvariant(), file.Value))]));
        Assert.Empty(reading.Problems);
        Assert.Equal(2, reading.Package!.Channels.Count);
        Assert.Equal(2, reading.Package.Points.Count);
        Assert.Equal(2, reading.Package.Findings.Count);
    }

    [Fact]
    public void Read_HeadersInLatin1AndInUtf8_GiveTheSameText()
    {
        const string Header = "Customer name :Göttin & Søn, Ä\n";
        var latin = new SamplePackage().With("FO-0042.mme", Encoding.Latin1.GetBytes(Header)).Read();
        var utf8 = new SamplePackage().With("FO-0042.mme", Encoding.UTF8.GetBytes(Header)).Read();
        var marked = new SamplePackage().With("FO-0042.mme", [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(Header)]).Read();
        foreach (var reading in new[] { latin, utf8, marked })
        {
            Assert.Empty(reading.Problems);
            Assert.Equal([new("Customer name", "Göttin & Søn, Ä", 1)], reading.Package!.TestHeader);
        }
    }

    [Fact]
    public void Read_ChannelFileInLatin1AndWithMark_GivesTheSameChannel()
    {
        var text = Channel(Code).Replace(":Head", ":Kopf, größer", StringComparison.Ordinal);
        foreach (var bytes in new[] { Encoding.Latin1.GetBytes(text), [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text)] })
        {
            var (channel, problems) = First(new SamplePackage().With(File, bytes));
            Assert.Empty(problems);
            IsTheSample(channel);
            Assert.Equal("Kopf, größer", channel.Header[1].Value);
        }
    }

    [Fact]
    public void Read_NoValue_CountsAsAbsent()
    {
        var (channel, problems) = First(new SamplePackage().Change(File, ":4905", ":NOVALUE").Change(File, "Channel frequency class     :1000", "Channel frequency class     :NoValue"));
        Assert.Empty(problems);
        Assert.Equal((null, null), (channel.AmplitudeClass, channel.HeaderFilterClass));
    }

    [Fact]
    public void Read_BlankLinesBetweenSamples_ArePassedOverWhereTheCountHoldsWithoutThem()
    {
        var (channel, problems) = First(new SamplePackage().With(File, Channel(Code, "0.5\n\n-1.25\n\n3e2\n\n4\n\n")));
        Assert.Empty(problems);
        IsTheSample(channel);
    }

    [Fact]
    public void Read_BlankLineThatStandsForASample_IsAMissingSampleInItsPlace()
    {
        var (channel, _) = First(new SamplePackage().With(File, Channel(Code, "0.5\n\n3e2\n4\n")));
        Assert.Equal([0.5, double.NaN, 300, 4], channel.Samples.ToArray());
        Assert.Equal(1, channel.FirstBadSample);
        Assert.Equal("sample 2 is '', which is not a number", channel.UnfitReason);
    }

    [Fact]
    public void Read_BadSample_IsNaNAndMakesTheChannelUnfit()
    {
        var (channel, problems) = First(new SamplePackage().Change(File, "-1.25", "-1..25"));
        Assert.Equal([0.5, double.NaN, 300, 4], channel.Samples.ToArray());
        Assert.Equal((1, "sample 2 is '-1..25', which is not a number"), (channel.FirstBadSample, channel.UnfitReason));
        var problem = Assert.Single(problems);
        Assert.Equal((12, "-1..25", Code), (problem.Line, problem.Value, problem.Channel));
    }

    [Fact]
    public void Read_ExplicitTimes_GiveStartAndInterval()
    {
        var reading = Timed("0 0.0001 0.0002 0.0003", "s");
        Assert.Equal((0.0, 0.0001, null), (reading.FirstSampleS, reading.IntervalS, reading.UnfitReason));
    }

    [Fact]
    public void Read_ExplicitTimesInMilliseconds_GiveSeconds()
    {
        var channel = Timed("-20 -19.9 -19.8 -19.7", "ms");
        Assert.Equal((-0.02, 0.0001), (channel.FirstSampleS, channel.IntervalS));
    }

    [Fact]
    public void Read_WideCsv_GivesAChannelAColumn()
    {
        var reading = new SamplePackage().Without(File, "Channel/FO-0042.002", "Channel/FO-0042.chn")
            .With("channel/Wide.CSV", "Time, 11pelv0000h3acxp ,\"11PELV0000H3ACYP\"\r\nms,g,g\r\n-1,0.5,1e1\r\n-0.95,-0.25,2\r\n-0.9,4,3\r\n\r\n").Read();
        Assert.DoesNotContain(reading.Problems, problem => problem.Severity != ProblemSeverity.Note);
        var channels = reading.Package!.Channels;
        Assert.Equal([("11PELV0000H3ACXP", 1), ("11PELV0000H3ACYP", 2)], channels.Select(channel => (channel.Code, channel.Number)));
        Assert.All(channels, channel => Assert.Equal((-0.001, 0.00005, "g"), (channel.FirstSampleS, channel.IntervalS, channel.Unit)));
        Assert.Equal([0.5, -0.25, 4], channels[0].Samples.ToArray());
        Assert.Equal([10, 2, 3], channels[1].Samples.ToArray());
    }

    [Fact]
    public void Read_WideCsvBesideChannelFiles_NumbersOn()
    {
        var reading = new SamplePackage().With("Channel/wide.csv", "time,11PELV0000H3ACXP\ns,g\n0,1\n0.0001,2\n").Read();
        Assert.Equal([1, 2, 3], reading.Package!.Channels.Select(channel => channel.Number));
    }

    [Fact]
    public void Read_Sidecars_TakeAnyColumnOrderCaseAndQuoting()
    {
        var reading = new SamplePackage()
            .With("Static/points.csv", "\uFEFFPOST_X,post_y,post_z,pre_x,pre_y,pre_z,Role,Point\r\n1,2,3,\"4\",5,6,Measured,\"pedal-brake\"\r\n,,,7,8,9,REFERENCE,ref-9\r\n")
            .With("Movie/findings.csv", "position,severity,region,kind,time_ms,note\n1,SEVERE,Head,Head-Strike,61,\"two\nlines, \"\"quoted\"\"\"\n")
            .With("Static/clearances.csv", Encoding.Latin1.GetBytes("distance,clearance,opposing_point\n120,ärmel,pedal-brake\n")).Read();
        Assert.Equal(
            [new("pedal-brake", PointRole.Measured, new(4, 5, 6), new(1, 2, 3), 2), new("ref-9", PointRole.Reference, new(7, 8, 9), null, 3)],
            reading.Package!.Points);
        Assert.Equal([new(61, null, "head-strike", "head", FindingSeverity.Severe, "two\nlines, \"quoted\"", 1, 2)], reading.Package.Findings);
        Assert.Equal([new Clearance("ärmel", "pedal-brake", 120, 2)], reading.Package.Clearances);
    }

    [Fact]
    public void Read_PointTwice_UsesTheFirst()
    {
        var reading = new SamplePackage().With("Static/points.csv", SamplePackage.Points + "\nwheel-hub,measured,9,9,9,9,9,9\n").Read();
        Assert.Equal(2000.5, reading.Package!.Points.Single(point => point.Name == "wheel-hub").Before!.Value.X);
    }

    [Fact]
    public void Read_UnknownMembers_AreKeptByPath()
    {
        var reading = new SamplePackage().Change("programme.json", "\"seat\"", "\"belt \\\"x\\\"'s\": [1, null], \"seat\"").Change("programme.json", "\"make\"", "\"colour\": \"teal\", \"make\"").Read();
        Assert.Equal(
            [("$.occupants[0]['belt \"x\"\\'s']", "[1, null]"), ("$.vehicle.colour", "\"teal\"")],
            reading.Package!.Programme.Unknown.Select(pair => (pair.Key, pair.Value.GetRawText())).Order());
    }

    [Fact]
    public void Read_LitterOfDesktops_IsLeftOut()
    {
        var files = new SamplePackage().Files.Select(file => new RawEntry("FO-0042/" + file.Key, file.Value));
        var reading = SamplePackage.Read(RawZip.Of([new RawEntry("__MACOSX/FO-0042/._programme.json", "x"), new RawEntry("FO-0042/", ""), .. files]));
        Assert.Equal([ProblemCodes.IgnoredEntry], reading.Problems.Select(problem => problem.Code));
        Assert.Equal(new SamplePackage().Read().Package!.ContentSha256, reading.Package!.ContentSha256);
    }

    private static RecordedChannel Timed(string times, string unit)
    {
        var package = new SamplePackage().Without("Channel/FO-0042.chn")
            .Change(File, ":implicit\n", ":explicit\nReference channel name      :10VEHC0000H3TI00\n").Change(File, ":0.0001", ":NOVALUE").Change(File, ":-0.01", ":NOVALUE")
            .With("Channel/FO-0042.002", Channel("10VEHC0000H3TI00", times + "\n", unit, "NOVALUE", "NOVALUE"));
        var (channel, problems) = First(package);
        Assert.Equal([ProblemCodes.NoIndex], problems.Select(problem => problem.Code));
        return channel;
    }
}
