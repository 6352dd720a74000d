using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Programme;

/// <summary>Two people at one vehicle, each in a browser of their own.</summary>
public sealed class VehicleEditPageTests(Site site)
{
    [Fact]
    public async Task Keep_SecondOfTwoBrowsers_IsToldAndNothingIsOverwritten()
    {
        var (first, second) = (await site.OpenSignedIn(), await site.OpenSignedIn());
        await Add(first, "velsey-lade-2032");
        await first.GotoAsync("/vehicles/velsey-lade-2032/edit");
        await second.GotoAsync("/vehicles/velsey-lade-2032/edit");

        await Keep(first, "Make", "Velsey Cars");
        await Keep(second, "Kerb mass, kg", "1777");

        await Assertions.Expect(second.GetByRole(AriaRole.Alert)).ToContainTextAsync("Somebody changed vehicle");
        await Assertions.Expect(second.GetByLabel("Kerb mass, kg")).ToHaveValueAsync("1777");
        await Assertions.Expect(second.Locator("table")).ToContainTextAsync("Velsey Cars");
        await second.GetByRole(AriaRole.Link, new() { Name = "Open it again" }).ClickAsync();
        await Assertions.Expect(second.GetByLabel("Make")).ToHaveValueAsync("Velsey Cars");
        await Assertions.Expect(second.GetByLabel("Kerb mass, kg")).ToHaveValueAsync("");
        await Keep(second, "Kerb mass, kg", "1777");
        await Assertions.Expect(second.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Velsey Cars Lade");
    }

    [Fact]
    public async Task Import_DryRunThenApplied_ChangesExactlyWhatWasShown()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/vehicles/import");
        await page.GetByLabel("CSV or spreadsheet").SetInputFilesAsync(new FilePayload
        {
            Name = "vehicles.csv", MimeType = "text/csv", Buffer = "vehicle,make,class\nquillon-ode-2031,Quillon,compact-electric\n"u8.ToArray(),
        });
        await page.GetByRole(AriaRole.Button, new() { Name = "Show what would change" }).ClickAsync();
        await Assertions.Expect(page.Locator("tbody")).ToContainTextAsync("added");
        Assert.Equal(404, (await page.APIRequest.GetAsync("/api/v1/vehicles/quillon-ode-2031")).Status);

        await page.GetByRole(AriaRole.Button, new() { Name = "Change exactly this" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What was changed" })).ToBeVisibleAsync();
        Assert.Equal(200, (await page.APIRequest.GetAsync("/api/v1/vehicles/quillon-ode-2031")).Status);
    }

    [Fact]
    public async Task Decide_ValidRunBecauseOfItsResult_IsRefusedInWords()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/tests/FO-0001/repeat");
        await page.GetByLabel("Trigger").SelectOptionAsync("ResultDoubted");
        await page.GetByLabel("Evidence").FillAsync("It looks too good");
        await page.GetByLabel("Options considered").FillAsync("Review of the channels");
        await page.GetByLabel("Have you seen measures of the run?").SelectOptionAsync("no");
        await page.GetByRole(AriaRole.Button, new() { Name = "Record the decision" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("never replaces a valid run because of its result");
        await Assertions.Expect(page.GetByLabel("Evidence")).ToHaveValueAsync("It looks too good");
    }

    private static async Task Add(IPage page, string key)
    {
        await page.GotoAsync("/vehicles/new");
        await page.GetByLabel("Key", new() { Exact = true }).FillAsync(key);
        await page.GetByLabel("Make").FillAsync("Velsey");
        await page.GetByLabel("Model", new() { Exact = true }).FillAsync("Lade");
        await Keep(page, "Model", "Lade");
        await page.WaitForURLAsync($"**/vehicles/{key}");
    }

    private static async Task Keep(IPage page, string field, string text)
    {
        await page.GetByLabel(field, new() { Exact = true }).FillAsync(text);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        await page.WaitForLoadStateAsync();
    }
}
