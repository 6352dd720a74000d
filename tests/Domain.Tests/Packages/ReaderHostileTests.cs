using System.Diagnostics;
using System.Globalization;
using Toepan.Domain.Packages;
using Xunit;

namespace Toepan.Domain.Tests.Packages;

/// <summary>What no table row can say: text that must pass through unharmed, identity of content, limits of memory and time, cancellation.</summary>
public sealed class ReaderHostileTests
{
    /// <summary>Text that would be a formula in a spreadsheet, a script in a page, a statement in a database, or a trap for a terminal or a log.</summary>
    public static TheoryData<string> Nasty =>
    [
        "=cmd|'/C calc'!A0", "+1+1", "-2+3", "@SUM(A1:A9)", "<script>alert(1)</script>", "\" onmouseover=\"alert(1)", "'; DROP TABLE runs; --",
        "{{7*7}}${7*7}", "../../etc/passwd", "%s%n%x", "\u001b[31mred", "\u202Eevol", "שלום", "😀", "a\tb", "NOVALUE", "null", "&amp;",
    ];

    [Theory]
    [MemberData(nameof(Nasty))]
    public void Read_NastyTextInEveryFreeField_IsKeptAsItIs(string text)
    {
        var json = System.Text.Json.JsonSerializer.Serialize(text);
        var cell = $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
        var reading = new SamplePackage()
            .Change("programme.json", "\"Hall 2\"", json).Change("programme.json", "\"Tarnbrook\"", json).Change("programme.json", "\"Voyle\"", json)
            .Change("programme.json", "\"driver\"", json).Change("programme.json", "\"kerbMassKg\"", $"{json}: {json}, \"kerbMassKg\"")
            .Change("FO-0042.mme", ":first", ":" + text).Change("Channel/FO-0042.001", ":Head\n", $":{text}\n")
            .Change("Movie/findings.csv", "C3", cell).Change("Movie/findings.csv", "by hand", cell).Change("Static/points.csv", "ref-1", cell).Read();
        var package = reading.Package!;
        var programme = package.Programme;
        Assert.Equal([text, text, text, text], [programme.Laboratory, programme.Vehicle.Make, programme.Vehicle.Model, programme.Occupants[0].Seat]);
        Assert.Equal(text, Assert.Single(programme.Unknown).Value.GetString());
        Assert.Equal([text, text], [package.TestHeader[3].Value, package.Channels[0].Header[1].Value]);
        Assert.Equal([text, text], [package.Findings[0].Camera, package.Findings[1].Note]);
        Assert.Equal(text.ToLowerInvariant(), package.Points[0].Name);
        Assert.DoesNotContain(reading.Problems, problem => problem.Severity == ProblemSeverity.Error);
        Assert.DoesNotContain(reading.Problems, problem => problem.Message.Any(char.IsControl));
    }

    [Fact]
    public void Read_OtherZipOfTheSameFiles_HasTheSameContent()
    {
        var files = new SamplePackage().Files;
        var stored = RawZip.Of([.. files.Reverse().Select(file => new RawEntry("top/" + file.Key, file.Value) { Method = 0, Mode = 0x81A4 })], comment: "made twice");
        var wide = RawZip.Of([.. files.Select(file => new RawEntry(file.Key, file.Value) { Zip64 = true })]);
        var expected = new SamplePackage().Read().Package!.ContentSha256;
        Assert.Equal([expected, expected], [SamplePackage.Read(stored).Package!.ContentSha256, SamplePackage.Read(wide).Package!.ContentSha256]);
        Assert.NotEqual(expected, new SamplePackage().Change("Movie/findings.csv", "61.5", "61.6").Read().Package!.ContentSha256);
        Assert.NotEqual(expected, new SamplePackage().With("Photo/b.jpg", [1]).Read().Package!.ContentSha256);
        Assert.Matches("^[0-9a-f]{64}$", expected);
    }

    [Fact]
    public void Read_ArchiveOverItsLimit_IsRefusedUnread()
    {
        var reading = new SamplePackage().Read(limits: new PackageLimits { MaxBytes = 1_000 });
        Assert.Null(reading.Package);
        var problem = Assert.Single(reading.Problems);
        Assert.Equal((ProblemCodes.TooManyBytes, "1000"), (problem.Code, problem.Limit));
    }

    [Fact]
    public void Read_ExpandedOverItsLimit_IsRefused() =>
        Assert.Equal([ProblemCodes.ExpandsTooFar], new SamplePackage().Read(limits: new PackageLimits { MaxExpandedBytes = 2_000 }).Problems.Select(problem => problem.Code));

    [Fact]
    public void Read_ManyProblemsAlike_AreCounted()
    {
        var rows = string.Concat(Enumerable.Range(0, 1_000).Select(i => string.Create(CultureInfo.InvariantCulture, $"p{i},measured,x,2,3,4,5,6\n")));
        var reading = new SamplePackage().With("Static/points.csv", SamplePackage.Points + "\n" + rows).Read();
        Assert.Equal(21, reading.Problems.Count);
        Assert.Equal((ProblemCodes.MoreAlike, "980"), (reading.Problems[^1].Code, reading.Problems[^1].Value));
    }

    [Fact]
    public void Read_HundredThousandEntries_IsRefusedAtOnce()
    {
        var zip = RawZip.Of([.. Enumerable.Range(0, 100_000).Select(i => new RawEntry($"Document/{i}.txt", []) { Method = 0 })]);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var watch = Stopwatch.StartNew();
        var reading = SamplePackage.Read(zip);
        Assert.Equal([ProblemCodes.TooManyEntries], reading.Problems.Select(problem => problem.Code));
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(1), $"{watch.Elapsed}");
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1 << 20);
    }

    [Fact]
    public void Read_Cancelled_Throws()
    {
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        var zip = new SamplePackage().Zip();
        Assert.Throws<OperationCanceledException>(() => PackageReader.Read(new MemoryStream(zip), SamplePackage.Known, PackageLimits.Default, cancelled.Token));
    }

    [Fact]
    public void Read_FailingStream_PassesTheFailureOn()
    {
        using var failing = new FailingStream(new SamplePackage().Zip());
        Assert.Throws<IOException>(() => PackageReader.Read(failing, SamplePackage.Known, PackageLimits.Default, TestContext.Current.CancellationToken));
    }

    private sealed class FailingStream(byte[] bytes) : MemoryStream(bytes)
    {
        public override int Read(Span<byte> buffer) => Position < 500 ? throw new IOException("the disk is gone") : base.Read(buffer);

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));
    }
}
