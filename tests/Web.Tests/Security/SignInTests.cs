using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Security;

public sealed class SignInTests(Site site)
{
    [Theory]
    [InlineData("/")]
    [InlineData("/tests/FO-0001")]
    [InlineData("/packages/new")]
    public async Task Page_SignedOut_LeadsToSignInAndBack(string address)
    {
        var page = await site.Open();
        await page.GotoAsync(address);
        Assert.Contains("/sign-in", page.Url, StringComparison.Ordinal);

        await page.GetByLabel("Name").FillAsync(site.Secrets.Name);
        await page.GetByLabel("Password").FillAsync(site.Secrets.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();

        await page.WaitForURLAsync(new Uri(site.Service.Address, address).ToString());
    }

    [Fact]
    public async Task SignIn_WrongPassword_SaysSoInWords()
    {
        var page = await site.Open();
        await Site.SignIn(page, "nobody", "not the password");

        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Name and password do not fit together");
    }

    [Fact]
    public async Task SignOut_Pressed_ClosesThePages()
    {
        var page = await site.OpenSignedIn();
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.GotoAsync("/tests");

        Assert.Contains("/sign-in", page.Url, StringComparison.Ordinal);
    }
}
