using System.Diagnostics;
using System.Globalization;
using System.Text;
using Toepan.Domain.Packages;
using Xunit;

namespace Toepan.Domain.Tests.Packages;

/// <summary>
/// Seeded mutations of good packages, of their bytes, their text and their archive: the reader never throws, never hangs, and gives a package or
/// an error. Runs for as many seconds as TOEPAN_FUZZ_SECONDS says (5 where it says nothing).
/// </summary>
public sealed class ReaderFuzzTests
{
    private const int Seed = 20310314;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private static readonly string[] Fragments =
    [
        "", " ", ",", ";", ":", "\"", "\n", "\r", "\r\n", "\t", "\0", "NaN", "Infinity", "-Infinity", "1e999", "-1", "0", "1e-320", "99999999999999999999", "NOVALUE",
        "null", "true", "{", "}", "[", "]", "[[[[[[[[", "{\"a\":", "\\ud800", "\uFEFF", "\u00E9", "é", "東京", "=1+1", "<script>", "../", "/", "\\", "explicit", "implicit",
        "time", "s", "ms", "reference", "measured", "Channel code :", "Number of samples :", "Sampling interval :", "1,5", "1.5.5", "--", "0x10", "+", "e", ".",
    ];

    private static TimeSpan Budget =>
        TimeSpan.FromSeconds(double.TryParse(Environment.GetEnvironmentVariable("TOEPAN_FUZZ_SECONDS"), NumberStyles.Float, CultureInfo.InvariantCulture, out var seconds) ? seconds : 5);

    [Fact]
    public void Read_MutatedPackages_GiveAPackageOrAnError()
    {
        var watch = Stopwatch.StartNew();
        for (var round = 0; watch.Elapsed < Budget; round++)
        {
            var zip = Mutant(new Random(Seed + round));
            var began = watch.Elapsed;
            PackageReading reading;
            try
            {
                reading = SamplePackage.Read(zip);
            }
            catch (Exception thrown) when (thrown is not OperationCanceledException)
            {
                throw new InvalidOperationException($"round {round} threw", thrown);
            }

            Assert.True(watch.Elapsed - began < Patience, $"round {round} took {watch.Elapsed - began}");
            Assert.True(reading.Package is not null || reading.Problems.Any(problem => problem.Severity == ProblemSeverity.Error), $"round {round} gave neither a package nor an error");
            if (reading.Package is { } package)
            {
                Assert.True(ReadsAgain(package), $"round {round} was written to something unreadable");
            }
        }
    }

    private static bool ReadsAgain(TestPackage package)
    {
        using var zip = new MemoryStream();
        PackageWriter.Write(zip, package);
        var again = SamplePackage.Read(zip.ToArray()).Package;
        return again is not null && again.Channels.Count == package.Channels.Count
            && again.Channels.Zip(package.Channels).All(pair => pair.First.UnfitReason is null == pair.Second.UnfitReason is null && pair.First.IntervalS == pair.Second.IntervalS);
    }

    private static byte[] Mutant(Random random)
    {
        var entries = Package(random).Files.Select(file => new RawEntry(file.Key, file.Value)).ToList();
        var kind = random.Next(10);
        for (var i = random.Next(1, 4); i > 0; i--)
        {
            var at = random.Next(entries.Count);
            entries[at] = kind switch
            {
                < 5 => entries[at] with { Content = Edit(entries[at].Content, random) },
                < 7 => entries[at] with { Content = Flip(entries[at].Content, random) },
                < 9 => Claim(entries[at], random),
                _ => entries[at],
            };
        }

        var zip = RawZip.Of(entries);
        return kind == 9 ? Flip(zip, random) : zip;
    }

    private static SamplePackage Package(Random random)
    {
        var package = new SamplePackage();
        return random.Next(4) switch
        {
            0 => package.With("Channel/wide.csv", "time,11PELV0000H3ACXP,11PELV0000H3ACYP\nms,g,g\n-1,0.5,10\n-0.95,-0.25,2\n-0.9,4,3\n"),
            1 => package.Change("Channel/FO-0042.001", ":implicit", ":explicit\nReference channel name :10VEHC0000H3TI00")
                .With("Channel/FO-0042.002", SamplePackage.Channel("10VEHC0000H3TI00", "0 0.0001 0.0002 0.0003\n", "s")),
            _ => package,
        };
    }

    // Text level: a fragment in, out, or in place of a stretch; a line doubled or moved.
    private static byte[] Edit(byte[] content, Random random)
    {
        var text = Encoding.Latin1.GetString(content);
        var from = random.Next(text.Length + 1);
        var to = Math.Min(text.Length, from + random.Next(12));
        var fragment = Encoding.Latin1.GetString(Encoding.UTF8.GetBytes(Fragments[random.Next(Fragments.Length)]));
        return Encoding.Latin1.GetBytes(random.Next(4) switch
        {
            0 => text[..from] + fragment + text[from..],
            1 => text[..from] + text[to..],
            2 => text[..from] + fragment + text[to..],
            _ => text[..from] + string.Concat(Enumerable.Repeat(text[from..to] + fragment, random.Next(50))) + text[to..],
        });
    }

    private static byte[] Flip(byte[] content, Random random)
    {
        var flipped = content.ToArray();
        for (var i = random.Next(1, 6); i > 0 && flipped.Length > 0; i--)
        {
            flipped[random.Next(flipped.Length)] = (byte)random.Next(256);
        }

        return random.Next(8) == 0 ? flipped[..random.Next(flipped.Length + 1)] : flipped;
    }

    private static RawEntry Claim(RawEntry entry, Random random) => random.Next(8) switch
    {
        0 => entry with { ClaimedSize = (uint)random.NextInt64(uint.MaxValue) },
        1 => entry with { ClaimedCrc = (uint)random.Next() },
        2 => entry with { Flags = (ushort)random.Next(ushort.MaxValue) },
        3 => entry with { Method = (ushort)random.Next(20), Packed = entry.Content },
        4 => entry with { Mode = (ushort)random.Next(ushort.MaxValue) },
        5 => entry with { Packed = Flip(RawZip.Deflate(entry.Content), random) },
        6 => entry with { Name = Flip(entry.Name, random) },
        _ => entry with { Zip64 = true },
    };
}
