using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace Toepan.Api.Store;

/// <summary>Registers the store over an <see cref="IStoreServer"/>, which the host supplies.</summary>
public static class StoreServices
{
    private const int ServicePool = 50;
    private const int PublicPool = 20;

    public static IServiceCollection AddStore(this IServiceCollection services)
    {
        services.AddSingleton(provider => Source(provider.GetRequiredService<IStoreServer>().Connections.Service, ServicePool));
        services.AddSingleton(provider => new PublicDataSource(Source(provider.GetRequiredService<IStoreServer>().Connections.Public, PublicPool)));
        services.AddDbContextFactory<ProgrammeDb>((provider, options) => options.UseProgramme(provider.GetRequiredService<NpgsqlDataSource>()));
        services.AddSingleton<AuditTrail>();
        services.AddScoped<AuditService>();
        services.AddSingleton<StoreHealth>();
        services.AddSingleton<KeyStore>();
        services.AddDataProtection().SetApplicationName("toepan");
        services.AddOptions<KeyManagementOptions>().Configure<KeyStore>((options, keys) => options.XmlRepository = keys);
        return services;
    }

    private static NpgsqlDataSource Source(string connectionString, int pool)
    {
        var builder = new NpgsqlConnectionStringBuilder(connectionString);
        var given = new NpgsqlConnectionStringBuilder(connectionString);
        builder.MaxPoolSize = given.ContainsKey("Maximum Pool Size") ? given.MaxPoolSize : pool;
        builder.Timeout = given.ContainsKey("Timeout") ? given.Timeout : 5;
        builder.ApplicationName ??= "toepan";
        return NpgsqlDataSource.Create(builder);
    }
}
