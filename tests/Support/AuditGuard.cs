using System.Data.Common;
using System.Runtime.CompilerServices;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store.Tables;

namespace Toepan.Support;

/// <summary>
/// Fails every transaction of the service under test that changes programme data through its context and writes no entry of the history.
/// Left out are sign-in's own rows (counters, stamps, keys), of which the history would only be a copy.
/// </summary>
internal sealed class AuditGuard : DbTransactionInterceptor, ISaveChangesInterceptor
{
    private static readonly Type[] SignIn =
    [
        typeof(Account), typeof(TokenRow), typeof(InvitationRow), typeof(SecondFactorRow), typeof(RecoveryCodeRow), typeof(DataProtectionKeyRow),
        typeof(IdentityRole<Guid>), typeof(IdentityUserRole<Guid>), typeof(IdentityUserLogin<Guid>), typeof(IdentityUserClaim<Guid>), typeof(IdentityUserToken<Guid>),
    ];

    private readonly ConditionalWeakTable<DbContext, HashSet<Type>> changed = [];

    public ValueTask<InterceptionResult<int>> SavingChangesAsync(DbContextEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        var context = eventData.Context!;
        var types = changed.GetOrCreateValue(context);
        types.UnionWith(context.ChangeTracker.Entries()
            .Where(entry => entry.State is EntityState.Added or EntityState.Modified or EntityState.Deleted)
            .Select(entry => entry.Metadata.ClrType));
        if (context.Database.CurrentTransaction is null)
        {
            Demand(context);
        }

        return ValueTask.FromResult(result);
    }

    public override ValueTask<InterceptionResult> TransactionCommittingAsync(
        DbTransaction transaction, TransactionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default)
    {
        if (eventData.Context is { } context)
        {
            Demand(context);
        }

        return ValueTask.FromResult(result);
    }

    public override void TransactionRolledBack(DbTransaction transaction, TransactionEndEventData eventData) => Forget(eventData.Context);

    public override Task TransactionRolledBackAsync(DbTransaction transaction, TransactionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        Forget(eventData.Context);
        return Task.CompletedTask;
    }

    private void Demand(DbContext context)
    {
        var types = changed.GetOrCreateValue(context);
        var programme = types.Where(type => !SignIn.Contains(type) && type != typeof(AuditRow)).Select(type => type.Name).ToArray();
        var audited = types.Contains(typeof(AuditRow));
        types.Clear();
        if (programme.Length > 0 && !audited)
        {
            throw new InvalidOperationException($"Programme data changed without an entry of the history: {string.Join(", ", programme)}.");
        }
    }

    private void Forget(DbContext? context)
    {
        if (context is not null)
        {
            changed.Remove(context);
        }
    }
}
