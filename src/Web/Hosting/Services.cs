using Toepan.Api;
using Toepan.Api.Packages;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Web.Pages;
using Toepan.Web.Sheets;

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
        services.AddSecurity(builder.Configuration);
        services.AddFeatureServices();
        services.AddOptions<UploadSettings>().PostConfigure<DataFolder, IConfiguration>(KeepUploadsInData);
        services.AddRazorComponents();
        services.AddPages();
        services.AddSingleton<PublicSheets>();
        services.AddScoped<PublicAnswers>();
        services.AddExceptionHandler<FailureHandler>();
        services.Configure<HostOptions>(options => options.ShutdownTimeout = ShutdownPatience);
        builder.WebHost.ConfigureKestrel(options =>
        {
            options.AddServerHeader = false;
            options.Limits.MinRequestBodyDataRate = new(LeastUploadBytesPerSecond, SlowUploadGrace);
        });
    }

    /// <summary>Half-received packages wait in the data folder unless the configuration names another place.</summary>
    private static void KeepUploadsInData(UploadSettings settings, DataFolder folder, IConfiguration configuration)
    {
        if (string.IsNullOrEmpty(configuration[$"{UploadSettings.Section}:{nameof(UploadSettings.Directory)}"]))
        {
            settings.Directory = Path.Combine(folder.Path, "uploads");
        }
    }
}
