using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Measures;

/// <summary>A finding's life on the page, and two people at one finding.</summary>
public sealed class FindingPageTests(Site site)
{
    private const string Run = "/tests/FO-0017";

    [Fact]
    public async Task Finding_AddedCorrectedByTwoAndWithdrawn_IsToldWithWhoAndWhy()
    {
        var (first, second) = (await site.OpenSignedIn(), await site.OpenSignedIn());
        await first.GotoAsync($"{Run}/findings/new?t=72.5");
        await Assertions.Expect(first.GetByLabel("Time, ms from contact")).ToHaveValueAsync("72.5");
        await first.GetByLabel("Kind").SelectOptionAsync("seam-separated");
        await first.GetByLabel("Severity").SelectOptionAsync("Concern");
        await first.GetByLabel("Region").SelectOptionAsync("structure");
        await first.GetByLabel("Note").FillAsync("Sill seam open for a hand's width");
        await first.GetByRole(AriaRole.Button, new() { Name = "Add and rate again" }).ClickAsync();
        await Assertions.Expect(first.Locator("#findings")).ToContainTextAsync("Sill seam open for a hand's width");

        await Open(first);
        await Open(second);
        await Correct(first, "Note", "measured again");
        await Correct(second, "Severe", "looks worse");

        await Assertions.Expect(second.GetByRole(AriaRole.Alert)).ToContainTextAsync("Somebody changed finding");
        await second.GetByRole(AriaRole.Link, new() { Name = "Open it again" }).ClickAsync();
        await Assertions.Expect(second.GetByLabel("Severity")).ToHaveValueAsync("Note");
        await second.GetByLabel("Reason for withdrawing").FillAsync("It was there before the crash");
        await second.GetByRole(AriaRole.Button, new() { Name = "Withdraw and rate again" }).ClickAsync();
        await second.GetByText("finding that no longer counts").ClickAsync();
        await Assertions.Expect(second.Locator("#findings details")).ToContainTextAsync("It was there before the crash");
    }

    private static async Task Open(IPage page)
    {
        await page.GotoAsync($"{Run}#findings");
        await page.Locator("#findings").GetByRole(AriaRole.Link, new() { Name = "seam separated" }).ClickAsync();
        await page.WaitForURLAsync("**/findings/a*");
    }

    private static async Task Correct(IPage page, string severity, string reason)
    {
        await page.GetByLabel("Severity").SelectOptionAsync(severity);
        await page.GetByLabel("Reason", new() { Exact = true }).FillAsync(reason);
        await page.GetByRole(AriaRole.Button, new() { Name = "Correct and rate again" }).ClickAsync();
        await page.WaitForLoadStateAsync();
    }
}
