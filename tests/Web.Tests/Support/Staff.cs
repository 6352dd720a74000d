using Microsoft.Playwright;

namespace Toepan.Web.Tests.Support;

/// <summary>People of the laboratory, each invited by the administrator and signed in to a browser of their own.</summary>
public static class Staff
{
    private const string Password = "three folded plum plates";

    /// <summary>Invites somebody with these roles (their words, lower case) and follows the link as that person.</summary>
    public static async Task<IPage> Join(Site site, string name, params string[] roles)
    {
        var administrator = await site.OpenSignedIn();
        await administrator.GotoAsync("/people");
        await administrator.GetByLabel("For whom").FillAsync(name);
        foreach (var role in roles)
        {
            await administrator.Locator($"#invite-{role}").CheckAsync();
        }

        await administrator.GetByRole(AriaRole.Button, new() { Name = "Make the link" }).ClickAsync();
        var link = await administrator.Locator(".secret").InnerTextAsync();
        var page = await site.Open();
        await page.GotoAsync(link);
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync(name);
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(Password);
        await page.GetByLabel("Password again").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the account and sign in" }).ClickAsync();
        await page.WaitForURLAsync(site.Service.Address.ToString());
        return page;
    }
}
