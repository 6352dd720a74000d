using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Npgsql.EntityFrameworkCore.PostgreSQL.Infrastructure;

namespace Toepan.Api.Store;

/// <summary>How <see cref="ProgrammeDb"/> talks to PostgreSQL; the same for the service, for migrations and for tests.</summary>
public static class ProgrammeDbOptions
{
    public static DbContextOptionsBuilder UseProgramme(this DbContextOptionsBuilder builder, NpgsqlDataSource source) =>
        builder.UseNpgsql(source, Common).UseSnakeCaseNamingConvention(CultureInfo.InvariantCulture);

    public static DbContextOptionsBuilder UseProgramme(this DbContextOptionsBuilder builder, string connectionString) =>
        builder.UseNpgsql(connectionString, Common).UseSnakeCaseNamingConvention(CultureInfo.InvariantCulture);

    /// <summary>Options of a context over one data source, for use outside a container.</summary>
    public static DbContextOptions<ProgrammeDb> For(NpgsqlDataSource source)
    {
        var builder = new DbContextOptionsBuilder<ProgrammeDb>();
        builder.UseProgramme(source);
        return builder.Options;
    }

    private static void Common(NpgsqlDbContextOptionsBuilder npgsql) =>
        npgsql.MigrationsHistoryTable(Schemas.MigrationTable, Schemas.Lab).SetPostgresVersion(14, 0);
}
