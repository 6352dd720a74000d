using System.Data.Common;
using System.Runtime.CompilerServices;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store.Tables;

namespace Toepan.Support;

/// <summary>
/// Fails every transaction of the service under test that changes programme data through its context and writes no entry of the history, or
/// alters a row and writes none that says what was before.
/// Left out are sign-in's own rows (counters, stamps, keys), of which the history would only be a copy.
/// </summary>
internal sealed class AuditGuard : DbTransactionInterceptor, ISaveChangesInterceptor
{
    private static readonly Type[] SignIn =
    [
        typeof(Account), typeof(TokenRow), typeof(InvitationRow), typeof(SecondFactorRow), typeof(RecoveryCodeRow), typeof(DataProtectionKeyRow),
        typeof(IdentityRole<Guid>), typeof(IdentityUserRole<Guid>), typeof(IdentityUserLogin<Guid>), typeof(IdentityUserClaim<Guid>), typeof(IdentityUserToken<Guid>),
    ];

    private readonly ConditionalWeakTable<DbContext, Changes> changed = [];

    public ValueTask<InterceptionResult<int>> SavingChangesAsync(DbContextEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        var context = eventData.Context!;
        changed.GetOrCreateValue(context).Note(context.ChangeTracker);
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
        var changes = changed.GetOrCreateValue(context);
        changed.Remove(context);
        if (changes.Fault is { } fault)
        {
            throw new InvalidOperationException(fault);
        }
    }

    private void Forget(DbContext? context)
    {
        if (context is not null)
        {
            changed.Remove(context);
        }
    }

    /// <summary>What one transaction has changed so far.</summary>
    private sealed class Changes
    {
        private readonly HashSet<string> added = [];
        private readonly HashSet<string> altered = [];
        private readonly List<AuditRow> entries = [];

        public string? Fault => (added.Count + altered.Count, altered.Count) switch
        {
            (0, _) => null,
            _ when entries.Count == 0 => $"Programme data changed without an entry of the history: {string.Join(", ", added.Union(altered))}.",
            (_, > 0) when entries.TrueForAll(entry => entry.Before is null) => $"Programme data altered, and the history does not say what was before: {string.Join(", ", altered)}.",
            _ => null,
        };

        public void Note(ChangeTracker tracker)
        {
            foreach (var entry in tracker.Entries().Where(entry => entry.State is EntityState.Added or EntityState.Modified or EntityState.Deleted))
            {
                if (entry.Entity is AuditRow row)
                {
                    entries.Add(row);
                }
                else if (!SignIn.Contains(entry.Metadata.ClrType))
                {
                    (entry.State == EntityState.Added ? added : altered).Add(entry.Metadata.ClrType.Name);
                }
            }
        }
    }
}
