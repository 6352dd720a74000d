using System.Diagnostics;
using System.Net;
using Toepan.Api.Tests.Packages;

namespace Toepan.Api.Tests.Sheets;

/// <summary>The preview of a sheet as a file, read back by poppler (general-purpose reference tools).</summary>
[Collection(ProgrammeReaders.Name)]
public sealed class SheetPdfTests(SharedProgramme programme)
{
    [Fact]
    public async Task Pdf_RatedRun_IsOneTaggedPageInReadingOrder()
    {
        using var answer = await programme.Lab.GetAsync("/sheets/preview/FO-0002.pdf", TestContext.Current.CancellationToken);
        var file = Path.GetTempFileName();
        await File.WriteAllBytesAsync(file, await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);

        var info = await Run("pdfinfo", file);
        var text = await Run("pdftotext", "-layout", file, "-");
        var tags = await Run("pdfinfo", "-struct-text", file);
        File.Delete(file);

        Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.MediaType);
        Assert.Matches(@"Pages:\s+1\b", info);
        Assert.Matches(@"Tagged:\s+yes", info);
        Assert.Contains("Title:           Velsey Porter", info, StringComparison.Ordinal);
        Assert.Contains("protection", text, StringComparison.Ordinal);
        Assert.True(tags.IndexOf("Velsey Porter", StringComparison.Ordinal) < tags.IndexOf("What it could do to people", StringComparison.Ordinal), tags);
    }

    // 250 kB: what the programme promises of every sheet.
    [Theory]
    [InlineData("FO-0002", "en", "What this does not tell")]
    [InlineData("FO-0002", "de", "Was dies nicht sagt")]
    [InlineData("FO-0023", "de", "Was dies nicht sagt")]
    public async Task Pdf_EachLanguage_IsSmallAndTellsNothingOfItsMaking(string test, string language, string heading)
    {
        var bytes = await programme.Lab.GetByteArrayAsync($"/sheets/preview/{test}.pdf?lang={language}", TestContext.Current.CancellationToken);
        var file = Path.GetTempFileName();
        await File.WriteAllBytesAsync(file, bytes, TestContext.Current.CancellationToken);

        var info = await Run("pdfinfo", file);
        var text = await Run("pdftotext", file, "-");
        var fonts = await Run("pdffonts", file);
        File.Delete(file);

        Assert.InRange(bytes.Length, 1, 250_000);
        Assert.Contains(heading, text, StringComparison.Ordinal);
        Assert.DoesNotContain("Author", info, StringComparison.Ordinal);
        Assert.DoesNotContain(Environment.MachineName, info, StringComparison.OrdinalIgnoreCase);
        Assert.All(fonts.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2), font => Assert.Matches(@"yes\s+yes", font));
    }

    [Fact]
    public async Task Pdf_UnknownRun_IsNotFound()
    {
        using var answer = await programme.Lab.GetAsync("/sheets/preview/FO-9999.pdf", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    private static async Task<string> Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, process.ExitCode);
        return output;
    }
}
