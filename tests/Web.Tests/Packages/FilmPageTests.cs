using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Packages;

/// <summary>
/// The film player in a real browser, on a clip whose frames carry their numbers: what is seen is read from the pixels and held against
/// frame = time · recorded rate + zero frame, here 1000 a second and 20.
/// </summary>
public sealed partial class FilmPageTests(Site site)
{
    [Fact]
    public async Task Film_SetSoughtAndStepped_ShowsTheFramesOfTheTimes()
    {
        var id = await site.Attach("FO-0002", TestFilm.Bytes, "?name=numbered.webm&camera=onboard-left");
        var page = await site.OpenSignedIn();
        await page.GotoAsync($"/tests/FO-0002/film?film={id}");
        await Assertions.Expect(page.GetByText("nothing can be sought by time")).ToBeVisibleAsync();
        await page.GetByLabel("Recorded, frames a second").FillAsync("1000");
        await page.GetByLabel("Frame of contact, from 0").FillAsync("20");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set the times" }).ClickAsync();
        await page.GetByText("Frame rate and time zero").ClickAsync();
        await Assertions.Expect(page.GetByText("1000 frames a second, contact at frame 20, played at 30")).ToBeVisibleAsync();

        await page.GotoAsync($"/tests/FO-0002/film?film={id}&t=55");
        await Shows(page, 75, "55.0 ms");
        await page.Keyboard.PressAsync("ArrowRight");
        await Shows(page, 76, "56.0 ms");
        await page.Keyboard.PressAsync("Shift+ArrowLeft");
        await Shows(page, 66, "46.0 ms");
        await page.Keyboard.PressAsync("Home");
        await Shows(page, 20, "0.0 ms");
        await page.GetByRole(AriaRole.Button, new() { Name = "One frame back" }).ClickAsync();
        await Shows(page, 19, "−1.0 ms");

        var finding = page.Locator(".film-list a").First;
        var ms = double.Parse(Number().Match(await finding.InnerTextAsync()).Value, System.Globalization.CultureInfo.InvariantCulture);
        await finding.ClickAsync();
        await Shows(page, (int)Math.Round(Math.Min(119, ms + 20)), null);
        Assert.Contains($"t={ms}", page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Film_PointClickedOnPlots_IsSoughtHereAndFromTheRun()
    {
        var id = await site.Attach("FO-0008", TestFilm.Bytes, "?name=numbered.webm");
        var page = await site.OpenSignedIn();
        await page.GotoAsync($"/tests/FO-0008/film?film={id}");
        await page.GetByLabel("Recorded, frames a second").FillAsync("1000");
        await page.GetByLabel("Frame of contact, from 0").FillAsync("20");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set the times" }).ClickAsync();
        await page.WaitForURLAsync("**/film?film=*");

        await ClickAt(page, page.Locator("figure[data-film] .wide svg.plot-canvas").First, 50);
        await ShowsAbout(page, 50);

        await page.GotoAsync("/tests/FO-0008#plots");
        await ClickAt(page, page.Locator("#plots figure[data-film] .wide svg.plot-canvas").First, 80);
        await page.WaitForURLAsync("**/tests/FO-0008/film?t=*");
        await ShowsAbout(page, 80);
    }

    [Fact]
    public async Task Film_ThatCannotBePlayed_SaysSoAndOffersToSaveIt()
    {
        byte[] broken = [0x1A, 0x45, 0xDF, 0xA3, 0x87, 0x42, 0x82, 0x84, .. "webm"u8, .. new byte[300]];
        var id = await site.Attach("FO-0003", broken, "?name=broken.webm");
        var page = await site.OpenSignedIn();
        await page.GotoAsync($"/tests/FO-0003/film?film={id}");

        await Assertions.Expect(page.Locator("#film-failed")).ToContainTextAsync("cannot play the film");
        await Assertions.Expect(page.Locator("#film-failed").GetByRole(AriaRole.Link)).ToHaveAttributeAsync("href", $"/api/v1/attachments/{id}/content?download=true");
    }

    [Fact]
    public async Task Attach_TwoFilesFromThePage_AreListedAndOneIsChosenForTheSheet()
    {
        var page = await site.OpenSignedIn();
        await page.GotoAsync("/tests/FO-0007/attachments");
        await page.GetByLabel("Files").SetInputFilesAsync(
        [
            new FilePayload { Name = "left.jpg", MimeType = "image/jpeg", Buffer = TestFilm.Photograph() },
            new FilePayload { Name = "protocol.txt", MimeType = "text/plain", Buffer = "a protocol"u8.ToArray() },
        ]);
        await page.GetByLabel("Caption").FillAsync("After the run");
        await page.GetByRole(AriaRole.Button, new() { Name = "Attach" }).ClickAsync();
        await Assertions.Expect(page.Locator(".contact-sheet li")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("table.data tbody tr")).ToHaveCountAsync(1);
        Assert.True(await page.Locator(".contact-sheet img").First.EvaluateAsync<bool>("async image => { image.loading = 'eager'; await image.decode(); return image.naturalWidth === 300; }"));

        await page.Locator(".contact-sheet a.picture").ClickAsync();
        await page.GetByLabel("What it shows").FillAsync("A box on grey ground");
        await page.GetByRole(AriaRole.Button, new() { Name = "Choose it" }).ClickAsync();

        await Assertions.Expect(page.GetByText("chosen: “A box on grey ground”")).ToBeVisibleAsync();
        var copy = await page.APIRequest.GetAsync(await page.GetByRole(AriaRole.Link, new() { Name = "As the public would have it" }).GetAttributeAsync("href") ?? "");
        Assert.Equal((200, "image/jpeg"), (copy.Status, copy.Headers["content-type"]));
    }

    private static async Task Shows(IPage page, int frame, string? clock)
    {
        await Assertions.Expect(page.Locator("#film-frame")).ToHaveTextAsync($"frame {frame}");
        await page.WaitForFunctionAsync("() => { const film = document.getElementById('film'); return !film.seeking && film.readyState >= 2; }");
        await page.WaitForFunctionAsync($"() => ({TestFilm.ReadNumber})() === {frame}");
        if (clock is not null)
        {
            await Assertions.Expect(page.Locator("#film-time")).ToHaveTextAsync(clock);
        }
    }

    // A screen's pixel is about half a millisecond of these plots.
    private static async Task ShowsAbout(IPage page, double ms)
    {
        await Assertions.Expect(page.Locator("#film-time")).ToHaveTextAsync(new Regex($"^{ms - 1}|^{ms}|^{ms + 1}"));
        var shown = double.Parse(Number().Match(await page.Locator("#film-time").InnerTextAsync()).Value, System.Globalization.CultureInfo.InvariantCulture);
        await Shows(page, (int)shown + 20, null);
    }

    // Where the axis puts a time, from the drawing's own description of its axes.
    private static async Task ClickAt(IPage page, ILocator plot, double ms)
    {
        await plot.ScrollIntoViewIfNeededAsync();
        var at = await plot.EvaluateAsync<double[]>("""
            (svg, ms) => {
              const d = svg.dataset, box = svg.getBoundingClientRect(), [, , w, h] = svg.getAttribute("viewBox").split(" ").map(Number);
              const x = Number(d.left) + (ms - d.xFrom) / (d.xTo - d.xFrom) * (d.right - d.left);
              return [box.left + x / w * box.width, box.top + (Number(d.top) + Number(d.bottom)) / 2 / h * box.height];
            }
            """, ms);
        await page.Mouse.ClickAsync((float)at[0], (float)at[1]);
    }

    [GeneratedRegex(@"-?[0-9]+(\.[0-9]+)?")]
    private static partial Regex Number();
}
