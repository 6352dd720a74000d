using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Shared;

public sealed class PreferenceTests(Site site)
{
    [Fact]
    public async Task Units_Switched_ShowMilesAndInchesOnTheSamePage()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/tests/FO-0001");
        await page.GetByRole(AriaRole.Button, new() { Name = "Units: metric" }).ClickAsync();

        Assert.EndsWith("/tests/FO-0001", page.Url, StringComparison.Ordinal);
        await Assertions.Expect(page.Locator("#conduct")).ToContainTextAsync("mph");
        await Assertions.Expect(page.Locator("#conduct")).Not.ToContainTextAsync("km/h");
    }

    [Fact]
    public async Task Theme_SwitchedToDark_OutlivesTheNextPage()
    {
        var page = await site.OpenSignedIn(scheme: ColorScheme.Light);
        await page.GetByRole(AriaRole.Button, new() { Name = "Theme: system" }).ClickAsync();
        await page.GotoAsync("/tests");

        Assert.Equal("dark", await page.Locator("html").GetAttributeAsync("data-theme"));
        Assert.Equal("rgb(19, 19, 26)", await page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor"));
    }
}
