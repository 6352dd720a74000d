using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Toepan.Api.Store;

/// <summary>For <c>dotnet ef</c> alone, which compares the model with the last migration and opens no connection.</summary>
public sealed class ProgrammeDbFactory : IDesignTimeDbContextFactory<ProgrammeDb>
{
    public ProgrammeDb CreateDbContext(string[] args)
    {
        var builder = new DbContextOptionsBuilder<ProgrammeDb>();
        builder.UseProgramme("Host=design-time");
        return new ProgrammeDb(builder.Options);
    }
}
