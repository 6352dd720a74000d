using Toepan.Web.Pages.Programme;

namespace Toepan.Web.Pages;

/// <summary>What pages need besides the feature services.</summary>
public static class PageServices
{
    public static IServiceCollection AddPages(this IServiceCollection services) => services
        .AddScoped<TestRunLoader>();
}
