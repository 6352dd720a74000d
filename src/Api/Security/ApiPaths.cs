using Microsoft.AspNetCore.Http;

namespace Toepan.Api.Security;

/// <summary>Paths that machines call: answered with status and problem details, never with a redirect or a page.</summary>
public static class ApiPaths
{
    private static readonly PathString[] Roots = ["/api", "/openapi", "/schemas", "/health"];

    public static bool Covers(PathString path) => Array.Exists(Roots, root => path.StartsWithSegments(root, StringComparison.OrdinalIgnoreCase));
}
