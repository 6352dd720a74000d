using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Sheets;

/// <summary>A sheet in both languages: it fits at 400 % zoom (320 px of 1280), and axe finds nothing in either colours.</summary>
public sealed class SheetPageTests(Site site)
{
    [Theory]
    [InlineData(320, ColorScheme.Dark)]
    [InlineData(1440, ColorScheme.Light)]
    public async Task Sheet_EachLanguage_FitsAndIsAccessible(int width, ColorScheme scheme)
    {
        var page = await site.OpenSignedIn(width, scheme);
        foreach (var language in new[] { "en", "de" })
        {
            await page.GotoAsync($"/sheets/preview/FO-0002?lang={language}");

            Assert.Equal(language, await page.Locator("article.sheet").GetAttributeAsync("lang"));
            Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth - window.innerWidth") <= 0);
            Assert.Empty((await page.RunAxe()).Violations.Select(violation => $"{violation.Id} at {violation.Nodes[0].Html}"));
        }
    }
}
