using System.Globalization;
using System.Text;
using Toepan.Domain.Packages;
using static Toepan.Domain.Tests.Packages.Malformed.MalformedCase;
using static Toepan.Domain.Tests.Packages.SamplePackage;

namespace Toepan.Domain.Tests.Packages.Malformed;

/// <summary>What headers, index and channel files can be beside good ones. A bad channel leaves the package readable.</summary>
internal static class MalformedChannels
{
    private const string Code = "11HEAD0000H3ACXP";
    private const string File = "Channel/FO-0042.001";
    private const string IndexFile = "Channel/FO-0042.chn";

    public static IEnumerable<MalformedCase> All() => [.. Headers(), .. Codes(), .. Times(), .. Samples(), .. Explicit(), .. Limits()];

    private static IEnumerable<MalformedCase> Headers() =>
    [
        Refused("no test header", package => package.Without("FO-0042.mme"), "E package.no-test-header"),
        Refused("test header in UTF-16", package => package.With("FO-0042.mme", Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes(SamplePackage.TestHeader)).ToArray()), "E text.encoding FO-0042.mme"),
        Refused("index in UTF-16", package => package.With(IndexFile, Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes(SamplePackage.Index)).ToArray()), "E text.encoding Channel/FO-0042.chn"),
        Refused("test header with NUL", package => package.With("FO-0042.mme", "Title :a\0b\n"), "E text.encoding FO-0042.mme"),
        Kept("two test headers", package => package.With("other.mme", "Title :x\n"), "W package.several-of-a-kind other.mme"),
        Kept("test header line without colon", package => package.With("FO-0042.mme", "Title :x\njust text\n"), "W header.line FO-0042.mme:2"),
        Refused("no channel at all", package => package.Without(File, "Channel/FO-0042.002", IndexFile), "E package.no-channel"),
        Kept("no index", package => package.Without(IndexFile), "W index.absent"),
        Kept("index without a channel", package => package.Change(IndexFile, "Name of channel 002", "Name of nothing"), "W index.lacks-channel Channel/FO-0042.chn"),
        Kept("index with a missing file", package => package.Change(IndexFile, "Name of channel 002", "Name of channel 003"), "W index.lacks-channel Channel/FO-0042.chn", "W index.lacks-file Channel/FO-0042.chn:4"),
        Kept("index names a channel twice", package => package.With(IndexFile, SamplePackage.Index + "\nName of channel 002 :11HEAD0000H3ACZP\n"), "W index.duplicate Channel/FO-0042.chn:5"),
        Kept("index counts wrongly", package => package.Change(IndexFile, ":2\r", ":7\r"), "W index.count-differs Channel/FO-0042.chn:2"),
        Kept("index and header differ", package => package.Change(File, Code, "11HEAD0000H3ACZP"), "W index.code-differs Channel/FO-0042.001:3"),
        Kept("header without a code", package => package.Change(File, Code, "NOVALUE"), "W channel.no-code Channel/FO-0042.001"),
        Kept("neither header nor index has a code", package => package.Change(File, Code, "").Without(IndexFile), "W index.absent", "E channel.no-code Channel/FO-0042.001"),
        Kept("unit twice", package => package.Change(File, "Sampling interval", "Unit :g\nSampling interval"), "W header.duplicate Channel/FO-0042.001:7"),
        Kept("stray text in the header", package => package.Change(File, "Channel code", "recorded on a cold day\nChannel code"), "W header.line Channel/FO-0042.001:3"),
    ];

    private static IEnumerable<MalformedCase> Codes() =>
    [
        Coded("code too short", "11HEAD0000H3ACX", "E channel.code-length Channel/FO-0042.001:3"),
        Coded("code too long", "11HEAD0000H3ACXPP", "E channel.code-length Channel/FO-0042.001:3"),
        Coded("code of one letter", "X", "E channel.code-length Channel/FO-0042.001:3"),
        Coded("code with a script", "<b>HEAD00H3ACXP>", "E channel.code-characters Channel/FO-0042.001:3"),
        Coded("code with accents", "11HÉAD0000H3ACXP", "E channel.code-characters Channel/FO-0042.001:3"),
        Coded("unknown test object", "Z1HEAD0000H3ACXP", "W channel.unknown-object Channel/FO-0042.001:3"),
        Coded("unknown location", "11QQQQ0000H3ACXP", "W channel.unknown-location Channel/FO-0042.001:3"),
        Coded("unknown dimension", "11HEAD0000H3QQXP", "W channel.unknown-dimension Channel/FO-0042.001:3"),
        Coded("unknown direction letter", "11HEAD0000H3ACQP", "W channel.unknown-direction Channel/FO-0042.001:3"),
        Coded("unknown filter letter", "11HEAD0000H3ACXQ", "W channel.unknown-filter Channel/FO-0042.001:3"),
        Kept("code twice", package => package.With("Channel/FO-0042.002", Channel(Code)).Without(IndexFile), "W index.absent", "W channel.duplicate-code Channel/FO-0042.002"),
        Kept("number twice", package => package.With("Channel/other.001", Channel("11PELV0000H3ACXP")).Without(IndexFile), "W index.absent", "W channel.duplicate-number Channel/other.001"),
    ];

    private static IEnumerable<MalformedCase> Times() =>
    [
        Changed("no interval", "0.0001", "NOVALUE", "E channel.no-interval Channel/FO-0042.001"),
        Changed("negative interval", "0.0001", "-0.0001", "E channel.bad-interval Channel/FO-0042.001:7"),
        Changed("interval of zero", "0.0001", "0", "E channel.bad-interval Channel/FO-0042.001:7"),
        Changed("interval that is no number", "0.0001", "10 kHz", "E channel.bad-interval Channel/FO-0042.001:7"),
        Changed("interval NaN", "0.0001", "NaN", "E channel.bad-interval Channel/FO-0042.001:7"),
        Changed("interval infinite", "0.0001", "1e999", "E channel.bad-interval Channel/FO-0042.001:7"),
        Changed("rate in place of the interval", "0.0001", "10000", "E channel.bad-interval Channel/FO-0042.001:7"),
        Changed("interval of nothing", "0.0001", "1e-300", "E channel.bad-interval Channel/FO-0042.001:7"),
        Changed("no time of first sample", "-0.01", "", "E channel.no-first-sample Channel/FO-0042.001"),
        Changed("time of first sample that is no time", "-0.01", "before", "E channel.bad-first-sample Channel/FO-0042.001:8"),
        Changed("time of first sample of another age", "-0.01", "1e300", "E channel.bad-first-sample Channel/FO-0042.001:8"),
        Changed("no unit", "m/(s*s)", "NOVALUE", "E channel.no-unit Channel/FO-0042.001:4"),
        Changed("amplitude class that is no number", ":4905", ":big", "W channel.bad-amplitude-class Channel/FO-0042.001:6"),
        Changed("unknown unit, which the channels judge", "m/(s*s)", "furlong/fortnight"),
    ];

    private static IEnumerable<MalformedCase> Samples() =>
    [
        Changed("no samples", "0.5\n-1.25\n3e2\n4\n", "", "E channel.no-samples Channel/FO-0042.001", "W channel.count-differs Channel/FO-0042.001:9"),
        Changed("fewer samples than stated", "3e2\n", "", "W channel.count-differs Channel/FO-0042.001:9"),
        Changed("more samples than stated", "3e2\n", "3e2\n1\n2\n", "W channel.count-differs Channel/FO-0042.001:9"),
        Changed("count that is no number", ":4\n", ":four\n", "W channel.bad-count Channel/FO-0042.001:9"),
        Changed("negative count", ":4\n", ":-4\n", "W channel.bad-count Channel/FO-0042.001:9"),
        Changed("count beyond counting", ":4\n", ":99999999999999999999\n", "W channel.bad-count Channel/FO-0042.001:9"),
        Changed("NaN sample", "3e2", "NaN", "E channel.bad-sample Channel/FO-0042.001:13"),
        Changed("infinite sample", "3e2", "Infinity", "E channel.bad-sample Channel/FO-0042.001:13"),
        Changed("sample beyond double", "3e2", "1e999", "E channel.bad-sample Channel/FO-0042.001:13"),
        Changed("NOVALUE sample", "3e2", "NOVALUE", "E channel.bad-sample Channel/FO-0042.001:13"),
        Changed("first sample NOVALUE", "0.5\n", "NOVALUE\n", "E channel.bad-sample Channel/FO-0042.001:11"),
        Changed("sample that is a word", "3e2", "=cmd|'/Ccalc'!A0", "E channel.bad-sample Channel/FO-0042.001:13"),
        Changed("sample with a colon", "3e2", "12:30", "E channel.bad-sample Channel/FO-0042.001:13"),
        Changed("first sample with a colon", "0.5\n", "12:30\n", "E channel.bad-sample Channel/FO-0042.001:11"),
        Changed("thousands separators", "3e2", "1,234.5", "E channel.bad-sample Channel/FO-0042.001:13"),
        Changed("blank line that stands for a sample", "3e2\n", "\n", "E channel.bad-sample Channel/FO-0042.001:13"),
        Changed("hexadecimal sample", "3e2", "0x12C", "E channel.bad-sample Channel/FO-0042.001:13"),
        Changed("decimal comma", "0.5\n-1.25", "0,5\n-1,25", "W text.decimal-comma Channel/FO-0042.001:11"),
        Changed("decimal comma in the header", "0.0001", "0,0001", "W text.decimal-comma Channel/FO-0042.001:7"),
        Kept("channel file in UTF-16", package => package.With(File, Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes(Channel(Code))).ToArray()), "E text.encoding Channel/FO-0042.001"),
        Kept("channel file of zeros", package => package.With(File, new byte[1_000]), "E text.encoding Channel/FO-0042.001"),
        Kept(
            "empty channel file", package => package.With(File, ""),
            "W channel.no-code Channel/FO-0042.001", "E channel.no-unit Channel/FO-0042.001", "E channel.no-interval Channel/FO-0042.001",
            "E channel.no-first-sample Channel/FO-0042.001", "E channel.no-samples Channel/FO-0042.001"),
    ];

    private static IEnumerable<MalformedCase> Explicit() =>
    [
        Timed("explicit times not named", "NOVALUE", "0 0.0001 0.0002 0.0003", "E channel.no-reference Channel/FO-0042.001:11"),
        Timed("explicit times of a channel that is not there", "10TIMX0000H3TI00", "0 0.0001 0.0002 0.0003", "E channel.no-reference Channel/FO-0042.001:11"),
        Timed("explicit times not uniform", TimeCode, "0 0.0001 0.0003 0.0004", "E channel.times-not-uniform Channel/FO-0042.001:11"),
        Timed("explicit times off by 2e-6 of an interval", TimeCode, "0 0.0001 0.0002000002 0.0003", "E channel.times-not-uniform Channel/FO-0042.001:11"),
        Timed("explicit times falling", TimeCode, "0.0003 0.0002 0.0001 0", "E channel.times-not-uniform Channel/FO-0042.001:11"),
        Timed("explicit times all the same", TimeCode, "0 0 0 0", "E channel.times-not-uniform Channel/FO-0042.001:11"),
        Timed("explicit times too few", TimeCode, "0 0.0001 0.0002", "E channel.times-unusable Channel/FO-0042.001:11", "W channel.count-differs Channel/FO-0042.002:9"),
        Timed("explicit times with a word", TimeCode, "0 0.0001 then 0.0003", "E channel.times-unusable Channel/FO-0042.001:11", "E channel.bad-sample Channel/FO-0042.002:11"),
        Timed("explicit times within 5e-7 of an interval", TimeCode, "0 0.0001 0.00020000005 0.0003"),
    ];

    private static IEnumerable<MalformedCase> Limits() =>
    [
        Refused("a line of a megabyte in a channel", package => package.Change(File, "3e2", Digits(1 << 20)), "E limit.line Channel/FO-0042.001:13"),
        Refused("a header line of a megabyte", package => package.Change(File, "Head\n", Digits(1 << 20) + "\n"), "E limit.line Channel/FO-0042.001:2"),
        Refused("a test header line of a megabyte", package => package.With("FO-0042.mme", "Title :" + Digits(1 << 20)), "E limit.line FO-0042.mme:1"),
        Refused("more samples than allowed", package => package.Change(File, "3e2", Repeat("7 8 9 3.25 0\n", 420_000)), "E limit.samples Channel/FO-0042.001:400012"),
        Refused("more channels than allowed", package => Enumerable.Range(1_000, 2_001).Aggregate(package, (all, i) => all.With($"Channel/x.{i}", Text(i))), "E limit.channels"),
        Refused("more samples together than allowed", package => package, "E limit.samples Channel/FO-0042.002:14") with { Limits = new PackageLimits { MaxTotalSamples = 7 } },
        Refused("more bytes of channels than allowed", package => package, "E limit.file-bytes Channel/FO-0042.002") with { Limits = new PackageLimits { MaxChannelBytes = 500 } },
        Refused("a channel file larger than allowed", package => package, "E limit.file-bytes Channel/FO-0042.001") with { Limits = new PackageLimits { MaxChannelFileBytes = 200 } },
        Refused("wide samples more than allowed", package => package.With("Channel/wide.csv", "time,11PELV0000H3ACXP\ns,g\n0,1\n0.0001,2\n0.0002,2\n0.0003,2\n0.0004,2\n"), "E limit.samples Channel/wide.csv") with { Limits = new PackageLimits { MaxSamples = 4 } },
        Refused("wide channels more than allowed", package => package.With("Channel/wide.csv", "time,11PELV0000H3ACXP,11PELV0000H3ACYP\ns,g,g\n0,1,2\n0.0001,2,3\n"), "E limit.channels Channel/wide.csv") with { Limits = new PackageLimits { MaxChannels = 3 } },
        Refused("header lines without end", package => package.With("FO-0042.mme", Repeat("a:b\n", 300_000) + Digits(10_000)), "E limit.header FO-0042.mme:250001"),
        Refused("test header of nine megabytes", package => package.With("FO-0042.mme", Repeat("Comments :" + Digits(990) + "\n", 9_000)), "E limit.file-bytes FO-0042.mme"),
    ];

    private const string TimeCode = "10TIME0000H3TI00";

    private static MalformedCase Changed(string name, string from, string to, params string[] problems) => Kept(name, package => package.Change(File, from, to), problems);

    private static MalformedCase Coded(string name, string code, params string[] problems) =>
        Kept(name, package => package.With(File, Channel(code)).Without(IndexFile), ["W index.absent", .. problems]);

    // Channel 1 with explicit times from channel 2.
    private static MalformedCase Timed(string name, string reference, string times, params string[] problems) => Kept(
        name,
        package => package.Without(IndexFile)
            .Change(File, ":implicit\n", $":explicit\nReference channel name      :{reference}\n").Change(File, ":0.0001", ":NOVALUE").Change(File, ":-0.01", ":NOVALUE")
            .With("Channel/FO-0042.002", Channel(TimeCode, times + "\n", "s", "NOVALUE", "NOVALUE")),
        ["W index.absent", "W channel.unknown-location Channel/FO-0042.002:3", .. problems]);

    // Digits that do not pack, so that the case meets its own limit and not that on the ratio.
    private static string Digits(int count)
    {
        var random = new Random(13499);
        return string.Create(count, random, static (span, source) =>
        {
            foreach (ref var digit in span)
            {
                digit = (char)('1' + source.Next(9));
            }
        });
    }

    private static string Repeat(string text, int times) => string.Concat(Enumerable.Repeat(text, times));

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
