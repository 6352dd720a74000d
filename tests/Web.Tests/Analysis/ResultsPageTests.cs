using System.Text;
using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Analysis;

public sealed class ResultsPageTests(Site site)
{
    private const string Header = "test,vehicle,make,model,class,modelYear,procedure,date,position,dummy,testMassKg,head.hic15\n";

    [Fact]
    public async Task Bring_File_ShowsFirstTakesThenAndIsWithdrawn()
    {
        var page = await site.OpenSignedIn();
        await Choose(page, "PB-1,page-old-1,Velsey,Sorrel,delivery-van,1999,offset-frontal-64,1999-05-06,1,H3,1200,512\n");
        await Assertions.Expect(page.Locator("#results-answer")).ToContainTextAsync("Nothing kept yet");
        await Assertions.Expect(page.Locator("#results-answer")).ToContainTextAsync("page-old-1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take exactly this in" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Open batch" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("yes, in the statistics");

        await page.GotoAsync("/vehicles/page-old-1");
        await Assertions.Expect(page.Locator("#vehicle-summaries")).ToBeVisibleAsync();
        await page.GotoAsync("/classes/delivery-van?runs=valid");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("summary result");

        await page.GotoAsync("/results?test=PB-1");
        await page.GetByRole(AriaRole.Link, new() { Name = "Batch" }).First.ClickAsync();
        await page.GetByLabel("Why it no longer counts").FillAsync("Only a trial");
        await page.GetByRole(AriaRole.Button, new() { Name = "Withdraw this batch" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("because: Only a trial");
        await page.GotoAsync("/results?test=PB-1");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("No summary result fits this selection");
    }

    [Fact]
    public async Task Bring_BadRow_NamesLineAndColumn()
    {
        var page = await site.OpenSignedIn();
        await Choose(page, "PB-2,page-old-2,Velsey,Sorrel,delivery-van,1999,offset-frontal-64,1999-05-06,1,H3,1200,many\n");

        await Assertions.Expect(page.Locator("#results-answer tbody")).ToContainTextAsync("line 2, head.hic15");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Take exactly this in" })).ToBeHiddenAsync();
    }

    private static async Task Choose(IPage page, string rows)
    {
        await page.GotoAsync("/results/new");
        await page.GetByLabel("CSV file").SetInputFilesAsync(new FilePayload { Name = "old.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(Header + rows) });
        await page.GetByRole(AriaRole.Button, new() { Name = "Show what would be created" }).ClickAsync();
    }
}
