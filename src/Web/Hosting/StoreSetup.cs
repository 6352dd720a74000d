using Toepan.Api.Store;

namespace Toepan.Web.Hosting;

/// <summary>Chooses between a server of somebody else's and the private cluster.</summary>
internal static class StoreSetup
{
    public static IServiceCollection AddStoreServer(this IServiceCollection services, IConfiguration configuration)
    {
        services.AddSingleton(_ => DataFolder.Open(configuration["data"] is { Length: > 0 } folder ? folder : DataFolder.Default));
        if (configuration.GetConnectionString("Programme") is { Length: > 0 } owner)
        {
            services.AddSingleton<IStoreServer>(_ => new ExternalServer(External(owner, configuration)));
        }
        else
        {
            services.AddSingleton<EmbeddedServer>();
            services.AddSingleton<IStoreServer>(provider => provider.GetRequiredService<EmbeddedServer>());
        }

        services.AddHostedService<StoreStartup>();
        services.AddHostedService<AuditAnchors>();
        services.AddScoped<FirstRun>();
        return services;
    }

    /// <summary>Registered after the store: only the private cluster is watched.</summary>
    public static IServiceCollection AddClusterSupervisor(this IServiceCollection services) =>
        services.Any(service => service.ServiceType == typeof(EmbeddedServer)) ? services.AddHostedService<ClusterSupervisor>() : services;

    private static StoreConnections External(string owner, IConfiguration configuration)
    {
        var service = configuration.GetConnectionString("ProgrammeService");
        var visitor = configuration.GetConnectionString("ProgrammePublic");
        if (!string.IsNullOrEmpty(service) && !string.IsNullOrEmpty(visitor))
        {
            var analyst = configuration.GetConnectionString("ProgrammeAnalyst");
            return StoreConnections.FromAll(owner, service, visitor, string.IsNullOrEmpty(analyst) ? null : analyst);
        }

        var roles = configuration["Store:ServiceRole"] is { Length: > 0 } serviceRole && configuration["Store:PublicRole"] is { Length: > 0 } publicRole
            ? new StoreRoles(serviceRole, publicRole, configuration["Store:AnalystRole"] is { Length: > 0 } analystRole ? analystRole : null)
            : null;
        return StoreConnections.FromOwner(owner, roles);
    }
}
