namespace Toepan.Web.Pages.Security;

/// <summary>What the sign-in form sends.</summary>
public sealed class SignInForm
{
    public string? Name { get; set; }
    public string? Password { get; set; }
}
