using Microsoft.AspNetCore.Components;
using Toepan.Api.Security;

namespace Toepan.Web.Components;

/// <summary>A page that asks a feature service: who asks, in which units the answer is shown, and when the reader has left.</summary>
public abstract class FeaturePage : ComponentBase
{
    [CascadingParameter]
    public HttpContext Http { get; set; } = default!;

    [CascadingParameter]
    public ReaderPreferences Preferences { get; set; } = ReaderPreferences.Default;

    protected Viewer Viewer => ViewerClaims.Read(Http.User);

    protected CancellationToken Left => Http.RequestAborted;
}
