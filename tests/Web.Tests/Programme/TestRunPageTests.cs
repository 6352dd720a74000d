using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Programme;

public sealed class TestRunPageTests(Site site)
{
    [Fact]
    public async Task Run_MeasureNameChosen_OpensItsFormulaAndSource()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/tests/FO-0001");
        await page.GetByRole(AriaRole.Button, new() { Name = "Head injury criterion, 15 ms" }).First.ClickAsync();

        var help = page.Locator("#about-head-hic15-1");
        await Assertions.Expect(help).ToBeVisibleAsync();
        await Assertions.Expect(help).ToContainTextAsync("head.hic15");
        await Assertions.Expect(help).ToContainTextAsync("CFC 1000");
    }

    [Fact]
    public async Task Run_ChannelFlaggedUnfit_IsReducedAgainWithTheReasonInItsHistory()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/tests/FO-0002/flags/new");
        var channel = await page.GetByLabel("Channel", new() { Exact = true }).InputValueAsync();
        await page.GetByLabel("Reason").FillAsync("Cable torn off, seen on camera 3");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep and reduce again" }).ClickAsync();

        await Assertions.Expect(page.Locator("#channels")).ToContainTextAsync(channel);
        await Assertions.Expect(page.Locator("#history")).ToContainTextAsync("Cable torn off, seen on camera 3");
    }

    [Fact]
    public async Task Run_Crumbs_LeadFromClassToVehicleToRun()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/tests/FO-0001");
        await page.GetByRole(AriaRole.Navigation, new() { Name = "Breadcrumbs" }).GetByRole(AriaRole.Link).Nth(2).ClickAsync();

        Assert.Contains("/vehicles/", page.Url, StringComparison.Ordinal);
        await Assertions.Expect(page.Locator("#runs").Locator("xpath=..")).ToContainTextAsync("FO-0001");
    }

    [Fact]
    public async Task Run_Unknown_Is404WithAWayOn()
    {
        var page = await site.OpenSignedIn();
        var response = await page.GotoAsync("/tests/FO-9999");

        Assert.Equal(404, response!.Status);
        await Assertions.Expect(page.Locator("main").GetByRole(AriaRole.Link, new() { Name = "board" })).ToBeVisibleAsync();
    }
}
