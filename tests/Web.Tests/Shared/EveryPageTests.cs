using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Shared;

/// <summary>What holds for every page, at the narrowest and a usual width, light and dark: it fits, it is accessible, its scripts and styles load.</summary>
public sealed class EveryPageTests(Site site)
{
    private static readonly string[] Addresses =
    [
        "/", "/?state=none", "/tests", "/tests?valid=false", "/tests/FO-0001", "/tests/FO-0008", "/tests/FO-0017", "/tests/FO-0001/flags/new", "/tests/FO-0001/findings/new", "/tests/FO-0001/film?t=40", "/tests/FO-0005/film", "/tests/FO-0001/attachments", "/attachments/1", "/attachments/2",
        "/repeats", "/repeats?tests=FO-0007,FO-0008", "/tests/FO-0002/holds", "/tests/FO-0008/holds",
        "/tests/FO-0001/repeat", "/tests/FO-0001/review", "/tests/FO-0001/equipment", "/equipment", "/equipment/new", "/tests/FO-0005/review", "/tests/FO-0001/preparation", "/plan/new", "/vehicles/new", "/vehicles/import", "/procedures",
        "/procedures/offset-frontal-64/1", "/schemes", "/schemes/offset-frontal-1", "/schemes/offset-frontal-1/what-if", "/methods/editions", "/explore", "/explore?x=chest.deflection&view=groups", "/explore?x=head.hic15&view=trend", "/explore?x=head.hic15&view=ranked",
        "/classes/delivery-van?sort=chest.deflection&dir=down", "/disagreements", "/packages/new", "/results", "/results/new", "/results/new?replaces=1", "/results/batches/9", "/methods", "/preferences", "/tests/FO-9999", "/nowhere",
        "/viewer", "/viewer?run=FO-0002&find=head%20x", "/viewer?t=FO-0002/11FEMRLE00H3FOZP@600&t=neg(FO-0001/11FEMRRI00H3FOZP@600)&a=60&b=90",
        "/people", "/tokens", "/account", "/account/second-factor", "/audit",
    ];

    private static readonly string[] AnonymousAddresses = ["/sign-in", "/sign-in/code", "/join", "/denied", "/not-found", "/error"];

    /// <summary>Width, colours, and whether accessibility is examined too: one narrow and one wide screen see every rule in both colours.</summary>
    public static TheoryData<int, ColorScheme, bool> Screens => new()
    {
        { 360, ColorScheme.Light, false }, { 360, ColorScheme.Dark, true }, { 1440, ColorScheme.Light, true }, { 1920, ColorScheme.Dark, false },
    };

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task Page_SignedIn_FitsAndIsAccessible(int width, ColorScheme scheme, bool examined)
    {
        var page = await site.OpenSignedIn(width, scheme);
        await AssertAll(page, examined, [.. Addresses, .. await LinkedFrom(page, "/tests/FO-0001", "/vehicles/"), .. await LinkedFrom(page, "/", "/classes/"), .. await LinkedFrom(page, "/people", "/people/")]);
    }

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task Page_SignedOut_FitsAndIsAccessible(int width, ColorScheme scheme, bool examined) =>
        await AssertAll(await site.Open(width, scheme), examined, AnonymousAddresses);

    private static async Task AssertAll(IPage page, bool examined, IEnumerable<string> addresses)
    {
        var faults = new List<string>();
        page.PageError += (_, error) => faults.Add($"{page.Url}: {error}");
        page.Response += (_, response) =>
        {
            if (response.Status >= 400 && response.Request.ResourceType != "document")
            {
                faults.Add($"{page.Url}: {response.Url} answered {response.Status}");
            }
        };
        foreach (var address in addresses)
        {
            var response = await page.GotoAsync(address);
            if (response!.Status >= 500)
            {
                faults.Add($"{address}: answered {response.Status}");
            }

            await page.EvaluateAsync("document.querySelectorAll('details').forEach(d => d.open = true)");
            faults.AddRange(await Overflow(page, address));
            if (examined)
            {
                faults.AddRange(await Inaccessible(page, address));
            }
        }

        Assert.Empty(faults);
    }

    private static async Task<IEnumerable<string>> Overflow(IPage page, string address)
    {
        var extra = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - window.innerWidth");
        return extra > 0 ? [$"{address}: {extra} px wider than the screen"] : [];
    }

    private static async Task<IEnumerable<string>> Inaccessible(IPage page, string address)
    {
        var result = await page.RunAxe();
        return result.Violations
            .Where(violation => violation.Impact is "serious" or "critical")
            .Select(violation => $"{address}: {violation.Id} ({violation.Impact}) at {violation.Nodes[0].Html}");
    }

    private static async Task<IReadOnlyList<string>> LinkedFrom(IPage page, string address, string start)
    {
        await page.GotoAsync(address);
        var links = await page.Locator($"a[href^='{start}']").EvaluateAllAsync<string[]>("all => all.map(a => a.getAttribute('href'))");
        return [.. links.Distinct().Order(StringComparer.Ordinal).Take(2)];
    }
}
