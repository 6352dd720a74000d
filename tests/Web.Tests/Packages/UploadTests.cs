using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Packages;

public sealed class UploadTests(Site site)
{
    [Fact]
    public async Task Upload_NewPackage_LeadsToItsRating()
    {
        var page = await site.OpenSignedIn();
        await Choose(page, "FO-0010.zip", DemoPackage.Zip("FO-0010"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Upload" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Open FO-0010" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "FO-0010", Level = 1 })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#standing .level .word")).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("^(high|moderate|low|very low) protection$|^not rated$"));
        await Assertions.Expect(page.Locator("#rating ol li").First).ToContainTextAsync("verall");
        await Assertions.Expect(page.Locator("#measures")).ToContainTextAsync("Head");
        await Assertions.Expect(page.Locator("#structure svg").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Upload_TriedOnly_KeepsNothing()
    {
        var page = await site.OpenSignedIn();
        await Choose(page, "FO-0012.zip", DemoPackage.Zip("FO-0012"));
        await page.GetByLabel("Only try it").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Upload" }).ClickAsync();

        await Assertions.Expect(page.Locator("#result h2")).ToContainTextAsync("nothing kept");
        Assert.Equal(404, (await page.GotoAsync("/tests/FO-0012"))!.Status);
    }

    [Fact]
    public async Task Upload_NoZip_ListsWhatIsWrong()
    {
        var page = await site.OpenSignedIn();
        await Choose(page, "holiday.zip", "not a zip at all"u8.ToArray());
        await page.GetByRole(AriaRole.Button, new() { Name = "Upload" }).ClickAsync();

        await Assertions.Expect(page.Locator("#result tbody tr")).Not.ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Upload_OtherBytesOfAKnownRun_AsksForAReasonAndReplaces()
    {
        var page = await site.OpenSignedIn();
        await Choose(page, "FO-0003.zip", DemoPackage.Zip("FO-0003", seed: 2));
        await page.GetByRole(AriaRole.Button, new() { Name = "Upload" }).ClickAsync();
        await page.GetByLabel("Reason for replacing it").FillAsync("The laboratory sent the wrong disk");
        await page.GetByRole(AriaRole.Button, new() { Name = "Replace the stored package" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Open FO-0003" }).ClickAsync();

        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("The laboratory sent the wrong disk");
    }

    private static async Task Choose(IPage page, string name, byte[] bytes)
    {
        await page.GotoAsync("/packages/new");
        await page.GetByLabel("Package", new() { Exact = true }).SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/zip", Buffer = bytes });
    }
}
