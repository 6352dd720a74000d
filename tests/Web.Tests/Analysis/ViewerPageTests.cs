using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Analysis;

/// <summary>The channel viewer as an analyst uses it.</summary>
public sealed class ViewerPageTests(Site site)
{
    private const string Femur = "FO-0002/11FEMRLE00H3FOZP@600";

    [Fact]
    public async Task ReadyMadeView_Zoomed_RefinesAndIsRestoredByItsLink()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/viewer?run=FO-0002");
        await page.GetByRole(AriaRole.Link, new() { Name = "Head resultant with its HIC windows, seat 1" }).ClickAsync();
        await Drawn(page, "0:200");

        var asked = page.WaitForRequestAsync(request => request.Url.Contains("/api/v1/traces?", StringComparison.Ordinal));
        await page.GetByRole(AriaRole.Button, new() { Name = "Zoom in" }).ClickAsync();
        Assert.Contains("from=0.05&to=0.15", (await asked).Url, StringComparison.Ordinal);
        await Drawn(page, "50:150");
        await page.Locator("#viewer-chart").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Drawn(page, "60:160");
        await page.Keyboard.PressAsync("a");
        await page.Locator("#viewer-values[data-read='110:']").WaitForAsync();

        var again = await page.Context.NewPageAsync();
        await again.GotoAsync(page.Url);
        await Drawn(again, "60:160");
        await again.Locator("#viewer-values[data-read='110:']").WaitForAsync();
        Assert.Equal(await Value(page, "a"), await Value(again, "a"));
    }

    [Fact]
    public async Task Cursors_Placed_ShowTheSamplesAndTheirDifference()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync($"/viewer?t={Femur}&from=0&to=150&a=60&b=90");
        await page.Locator("#viewer-values[data-read='60:90']").WaitForAsync();
        await page.Locator("#viewer-chart").FocusAsync();
        await page.Keyboard.PressAsync("b");
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await page.Locator("#viewer-values[data-read='60:90.1']").WaitForAsync();

        var samples = await Samples(page);
        Assert.Equal(samples(0.0600), await Value(page, "a"));
        Assert.Equal(samples(0.0901), await Value(page, "b"));
        Assert.Equal(samples(0.0901) - samples(0.0600), await Value(page, "delta"), 1e-12);
    }

    [Fact]
    public async Task Exports_Asked_DownloadWhatIsShown()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync($"/viewer?t={Femur}&t=neg({Femur})&from=10&to=20");
        await Drawn(page, "10:20");

        var svg = await Saved(page, page.GetByRole(AriaRole.Button, new() { Name = "SVG" }));
        var png = await Saved(page, page.GetByRole(AriaRole.Button, new() { Name = "PNG" }));
        var csv = System.Text.Encoding.UTF8.GetString(await Saved(page, page.GetByRole(AriaRole.Link, new() { Name = "CSV of this window" }))).TrimEnd('\n').Split('\n');

        Assert.StartsWith("<svg", System.Text.Encoding.UTF8.GetString(svg), StringComparison.Ordinal);
        Assert.Equal([0x89, 0x50, 0x4e, 0x47], png[..4]);
        Assert.Equal(102, csv.Length);
        var samples = await Samples(page);
        Assert.Equal(samples(0.015), double.Parse(csv[51].Split(',')[1], CultureInfo.InvariantCulture));
        Assert.Equal(-samples(0.015), double.Parse(csv[51].Split(',')[2], CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task Traces_OfAnotherRunAndTheirDifference_AreAddedByTheForm()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync($"/viewer?t={Femur}");
        await page.GetByLabel("The same traces of run").FillAsync("FO-0001");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add them" }).ClickAsync();
        foreach (var box in await page.Locator("input[name=pick]").AllAsync())
        {
            await box.CheckAsync();
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Difference" }).ClickAsync();

        Assert.Equal($"diff({Femur},{Femur.Replace("FO-0002", "FO-0001", StringComparison.Ordinal)})", await page.GetByLabel("Trace 3").InputValueAsync());
        await page.Locator("#viewer[data-drawn]").WaitForAsync();
        Assert.Equal(0, await page.Locator("main .notice:visible").CountAsync());
    }

    [Fact]
    public async Task View_WithoutScript_IsDrawnWithItsCursorValues()
    {
        var context = await site.Browser.NewContextAsync(new() { BaseURL = site.Service.Address.ToString(), JavaScriptEnabled = false });
        var page = await context.NewPageAsync();
        await Site.SignIn(page, site.Secrets.Name, site.Secrets.Password);
        await page.GotoAsync($"/viewer?t={Femur}&a=60");

        Assert.True(await page.Locator(".viewer-static svg .plot-line").First.IsVisibleAsync());
        Assert.NotEqual("–", await page.Locator("[data-cursor=a]").InnerTextAsync());
        Assert.False(await page.Locator("#viewer-chart").IsVisibleAsync());
    }

    [Fact]
    public async Task View_MistypedTrace_SaysWhereAndKeepsTheText()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/viewer?t=rse(FO-0002/X)");

        Assert.Contains("one of the functions res, int", await page.GetByRole(AriaRole.Alert).InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal("rse(FO-0002/X)", await page.GetByLabel("Trace 1").InputValueAsync());
    }

    private static Task Drawn(IPage page, string window) => page.Locator($"#viewer[data-drawn='{window}']").WaitForAsync();

    private static async Task<double> Value(IPage page, string cursor) =>
        double.Parse((await page.Locator($"[data-cursor={cursor}]").First.GetAttributeAsync("data-value"))!, CultureInfo.InvariantCulture);

    /// <summary>The channel's own samples, by time.</summary>
    private static async Task<Func<double, double>> Samples(IPage page)
    {
        var answer = await page.APIRequest.GetAsync("/api/v1/tests/FO-0002/channels/11FEMRLE00H3FOZP?cfc=600", new() { Headers = [new("Accept", "application/json")] });
        var json = JsonDocument.Parse(await answer.TextAsync()).RootElement;
        var (from, interval, values) = (json.GetProperty("from").GetDouble(), json.GetProperty("interval").GetDouble(), json.GetProperty("values"));
        return time => values[(int)Math.Round((time - from) / interval)].GetDouble();
    }

    private static async Task<byte[]> Saved(IPage page, ILocator control)
    {
        var download = await page.RunAndWaitForDownloadAsync(() => control.ClickAsync());
        return await File.ReadAllBytesAsync(await download.PathAsync());
    }
}
