using Toepan.Api;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Web.Hosting;

/// <summary>Everything the service is made of.</summary>
internal static class Services
{
    private static readonly TimeSpan ShutdownPatience = TimeSpan.FromSeconds(25);
    private static readonly TimeSpan SlowUploadGrace = TimeSpan.FromSeconds(30);
    private const double LeastUploadBytesPerSecond = 240;

    public static void AddToepan(this WebApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddStoreServer(builder.Configuration);
        services.AddSingleton(TimeProvider.System);
        services.AddStore();
        services.AddClusterSupervisor();
        services.AddSecurity();
        services.AddFeatureServices();
        services.AddSingleton(builder.Configuration.GetSection("Packages").Get<PackageLimits>() ?? PackageLimits.Default);
        services.AddRazorComponents();
        services.AddOpenApi();
        services.AddProblemDetails();
        services.AddExceptionHandler<FailureHandler>();
        services.Configure<HostOptions>(options => options.ShutdownTimeout = ShutdownPatience);
        builder.WebHost.ConfigureKestrel(options =>
        {
            options.AddServerHeader = false;
            options.Limits.MinRequestBodyDataRate = new(LeastUploadBytesPerSecond, SlowUploadGrace);
        });
    }
}
