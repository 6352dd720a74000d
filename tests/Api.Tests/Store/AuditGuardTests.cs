using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Store;

/// <summary>Every test over the whole service also watches that no change of programme data goes past the history; here the watch itself.</summary>
public sealed class AuditGuardTests(PostgresFixture postgres)
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Save_ProgrammeDataWithoutAnEntry_IsRefused(bool inTransaction)
    {
        await using var api = await ApiHost.Start(postgres);
        await using var db = await api.Services.GetRequiredService<IDbContextFactory<ProgrammeDb>>().CreateDbContextAsync(TestContext.Current.CancellationToken);
        db.Add(new VehicleClassRow { Key = "coupe", Title = "Coupes" });

        await Assert.ThrowsAsync<InvalidOperationException>(() => Save(db, inTransaction));
    }

    private static async Task Save(ProgrammeDb db, bool inTransaction)
    {
        await using var transaction = inTransaction ? await db.Database.BeginTransactionAsync(TestContext.Current.CancellationToken) : null;
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        await (transaction?.CommitAsync(TestContext.Current.CancellationToken) ?? Task.CompletedTask);
    }
}
