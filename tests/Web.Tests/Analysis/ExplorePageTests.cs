using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Analysis;

/// <summary>Class comparison and explore as an analyst uses them.</summary>
public sealed class ExplorePageTests(Site site)
{
    [Fact]
    public async Task Explore_AnotherQuestion_StandsInTheAddressAndIsSaved()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/explore");
        await page.GetByLabel("Show").SelectOptionAsync("distribution");
        await page.GetByLabel("Measure", new() { Exact = true }).SelectOptionAsync("chest.deflection");
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask" }).ClickAsync();

        Assert.Contains("x=chest.deflection", page.Url, StringComparison.Ordinal);
        Assert.Contains("the median is", await page.Locator("section[aria-labelledby=answer-title]").InnerTextAsync(), StringComparison.Ordinal);

        await page.Locator("#question-name").FillAsync("How chests fare");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save this question" }).ClickAsync();
        await page.GotoAsync("/explore");
        await page.GetByRole(AriaRole.Link, new() { Name = "How chests fare" }).ClickAsync();
        Assert.Contains("view=distribution", page.Url, StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "Remove How chests fare" }).ClickAsync();
        Assert.Equal(0, await page.GetByRole(AriaRole.Link, new() { Name = "How chests fare" }).CountAsync());
    }

    [Fact]
    public async Task Class_PickedVehicle_StandsOutInTableAndStripsWithItsRepeatBand()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/classes/delivery-van");
        await page.GetByLabel("Pick out").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await page.GetByLabel("Sort by").SelectOptionAsync("chest.deflection");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show" }).ClickAsync();

        Assert.Equal(1, await page.Locator("tr.picked").CountAsync());
        Assert.True(await page.Locator(".strips .dot.picked:visible").CountAsync() >= 5);
        Assert.True(await page.Locator(".strips .plot-band:visible").CountAsync() > 0);
        Assert.Contains("within a tenth of the mass", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(await page.Locator("td[data-label=Place]").CountAsync() > 0);
    }
}
