using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Programme;

/// <summary>Changes of rows that two people may have open at once.</summary>
internal static class Edits
{
    /// <summary>The refusal for the second of two editors.</summary>
    public static Failure ChangedMeanwhile(string what, uint version) => new(
        FailureKind.Conflict, "Changed meanwhile",
        $"Somebody changed {what} after you opened it. Nothing of yours was kept and nothing of theirs overwritten: look at it again, then make your change.")
    {
        Members = new Dictionary<string, object?> { ["version"] = version },
    };

    /// <summary>Saves and writes the audit entry in one transaction; false where a row was changed by somebody else since it was read.</summary>
    public static async Task<bool> Save(ProgrammeDb context, AuditTrail audit, Viewer viewer, Func<AuditNote> note, CancellationToken cancellation)
    {
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        try
        {
            await context.SaveChangesAsync(cancellation);
        }
        catch (DbUpdateConcurrencyException)
        {
            return false;
        }

        await audit.Append(context, viewer, note(), cancellation);
        await transaction.CommitAsync(cancellation);
        return true;
    }
}
