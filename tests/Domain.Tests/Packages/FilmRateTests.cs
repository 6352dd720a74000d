using System.Globalization;
using Toepan.Domain.Packages;
using Toepan.Domain.Packages.Films;
using Xunit;

namespace Toepan.Domain.Tests.Packages;

/// <summary>Frame rates of containers against ffprobe's (tests/reference/films/rates.txt, written by make.sh beside it).</summary>
public sealed class FilmRateTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "reference", "films");

    public static TheoryData<string, double> Rates => new(File.ReadLines(Path.Combine(Folder, "rates.txt")).Select(line => line.Split(' '))
        .Select(parts => (parts[0], parts[1].Split('/').Select(number => double.Parse(number, CultureInfo.InvariantCulture)).Aggregate((a, b) => a / b))));

    [Theory]
    [MemberData(nameof(Rates))]
    public void Of_RealFilm_IsWhatFfprobeSays(string file, double rate)
    {
        var bytes = File.ReadAllBytes(Path.Combine(Folder, file));

        Assert.Equal(rate, FilmRate.Of(new MemoryStream(bytes), FileSignature.Of(bytes))!.Value, 1e-3);
    }

    [Theory]
    [MemberData(nameof(Rates))]
    public void Of_CutOrBrokenFilm_IsNullOrARate(string file, double rate)
    {
        Assert.True(rate > 0);
        var bytes = File.ReadAllBytes(Path.Combine(Folder, file));
        var type = FileSignature.Of(bytes);
        var random = new Random(7);
        for (var round = 0; round < 300; round++)
        {
            var broken = bytes[..random.Next(1, bytes.Length)];
            broken[random.Next(broken.Length)] = (byte)random.Next(256);
            broken[random.Next(Math.Min(64, broken.Length))] = (byte)random.Next(256);

            Assert.True(FilmRate.Of(new MemoryStream(broken), type) is null or > 0);
        }
    }

    /// <summary>The first bytes of formats as their specifications give them, and of things that only look alike.</summary>
    [Theory]
    [InlineData("FFD8FFE000104A464946", "image/jpeg")]
    [InlineData("89504E470D0A1A0A0000000D49484452", "image/png")]
    [InlineData("89504E470D0A", FileSignature.Unknown)]
    [InlineData("52494646240000005745425056503820", "image/webp")]
    [InlineData("524946462400000057415645666D7420", FileSignature.Unknown)]
    [InlineData("000000206674797069736F6D00000200", "video/mp4")]
    [InlineData("0000001466747970717420200000020071742020", FileSignature.Unknown)]
    [InlineData("1A45DFA39F4286810142F7810142F2810442F381084282847765626D", "video/webm")]
    [InlineData("1A45DFA3A34286810142F7810142F2810442F3810842828886D6174726F736B61", FileSignature.Unknown)]
    [InlineData("255044462D312E37", "application/pdf")]
    [InlineData("3C73766720786D6C6E733D", FileSignature.Unknown)]
    [InlineData("", FileSignature.Unknown)]
    public void Signature_FirstBytes_TellTheType(string hex, string type) =>
        Assert.Equal(type, FileSignature.Of(Convert.FromHexString(hex.Length % 2 == 0 ? hex : hex + "0")));

    [Fact]
    public void FilmsFile_RowsThatCannotBe_RefuseThePackageWithLine()
    {
        foreach (var (row, value) in new[] { ("a.webm,0,5", "0"), ("a.webm,fast,5", "fast"), ("a.webm,1000,", ""), (",1000,5", "") })
        {
            var reading = new SamplePackage().With("Movie/films.csv", $"file,frames_per_second,time_zero_frame\n{row}\n").Read();

            var problem = Assert.Single(reading.Problems, problem => problem.Severity == ProblemSeverity.Error);

            Assert.Equal(("Movie/films.csv", 2, value), (problem.File, problem.Line, problem.Value));
        }
    }

    [Fact]
    public void Writer_Films_ReadBackTheSame()
    {
        const string Films = "file,frames_per_second,time_zero_frame,camera,playback_frames_per_second\nMovie/one.mp4,1000.5,-3,roof,25\ntwo.mp4,500,0,,\n";
        var read = new SamplePackage().With("Movie/films.csv", Films).Read().Package!;
        using var zip = new MemoryStream();
        PackageWriter.Write(zip, read);

        var again = SamplePackage.Read(zip.ToArray()).Package!;

        Assert.Equal(read.Films, again.Films);
        Assert.Equal(new FilmTiming("Movie/one.mp4", "roof", 1000.5, -3, 25, 2), again.Films[0] with { Line = 2 });
        Assert.Equal(52.8, new FilmTiming("x", null, 1000, 25, null, 0).TimeMs(77.8), 1e-12);
        Assert.Equal(77.8, new FilmTiming("x", null, 1000, 25, null, 0).Frame(52.8), 1e-12);
    }
}
