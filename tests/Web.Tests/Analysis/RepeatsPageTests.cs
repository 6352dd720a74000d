using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Analysis;

/// <summary>Repeats, and whether a run would come out the same again, as a reader meets them.</summary>
public sealed class RepeatsPageTests(Site site)
{
    [Fact]
    public async Task Repeats_FromTheRunsPage_SayWhichPartsRepeat()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/tests/FO-0008");
        await page.GetByRole(AriaRole.Link, new() { Name = "side by side" }).ClickAsync();

        Assert.Contains("repeats", await page.TitleAsync(), StringComparison.Ordinal);
        var verdict = await page.Locator("section[aria-labelledby=verdict-title]").InnerTextAsync();
        Assert.Matches("The structure (repeats|does not repeat)", verdict);
        Assert.Matches("The pulse (repeats|does not repeat)", verdict);
        Assert.Matches("The dummies (repeat|do not repeat)", verdict);
        Assert.True(await page.Locator("figure.survival svg:visible").CountAsync() > 0);
        Assert.Contains("ISO/TS 18571", await page.Locator("section[aria-labelledby=curves-title]").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Repeats_WithoutScriptAndWithoutRuns_OfferEveryVehicleThatHasThem()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/repeats");

        Assert.Contains("FO-0007", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Holds_WithACost_SaysTheChanceAndWhatARepeatIsWorth()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/tests/FO-0002");
        await page.GetByRole(AriaRole.Link, new() { Name = "Would it come out the same again?" }).ClickAsync();
        var before = await page.Locator("main").InnerTextAsync();
        Assert.Contains("with a chance of", before, StringComparison.Ordinal);
        Assert.Contains("What the level rests on", before, StringComparison.Ordinal);

        await page.GetByRole(AriaRole.Spinbutton, new() { Name = "Cost of a vehicle" }).FillAsync("25000");
        await page.GetByRole(AriaRole.Button, new() { Name = "Weigh it" }).ClickAsync();

        Assert.Matches("A vehicle costs 25|No draw changed", await page.Locator("main").InnerTextAsync());
    }
}
