using Microsoft.AspNetCore.Http;

namespace Toepan.Api.Security;

/// <summary>Who asks, for pages: <c>@inject IViewerAccessor Viewers</c>.</summary>
public interface IViewerAccessor
{
    /// <summary>The viewer of the request being answered; the public outside one.</summary>
    Viewer Current { get; }
}

/// <summary>Reads the viewer from the request.</summary>
internal sealed class RequestViewer(IHttpContextAccessor contexts) : IViewerAccessor
{
    public Viewer Current => contexts.HttpContext is { } context ? ViewerClaims.Read(context.User) : Viewer.Public;
}
