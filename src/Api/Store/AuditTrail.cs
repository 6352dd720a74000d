using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security;
using Toepan.Api.Store.Tables;

namespace Toepan.Api.Store;

/// <summary>What was done, to what, and what it changed; before and after are written as JSON.</summary>
/// <param name="Action">One word or two: <c>upload</c>, <c>flag</c>, <c>sign</c> …</param>
/// <param name="Entity">Kind and key, e.g. <c>test/FO-0042</c>.</param>
/// <param name="Before">What was, or null.</param>
/// <param name="After">What is, or null.</param>
public sealed record AuditNote(string Action, string Entity, object? Before = null, object? After = null);

/// <summary>The history nobody can rewrite: rows chained by hash in the database, which the service's login can only add to.</summary>
public sealed class AuditTrail(TimeProvider clock)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter(WordNaming.Instance) } };

    /// <summary>
    /// Adds one row in the transaction of <paramref name="db"/>. The chain stays locked until that transaction ends: call it last,
    /// just before the commit.
    /// </summary>
    public async Task Append(ProgrammeDb db, Viewer viewer, AuditNote note, CancellationToken cancellation = default)
    {
        db.Add(new AuditRow
        {
            At = clock.GetUtcNow(), Who = viewer.Name, Action = note.Action, Entity = note.Entity,
            Before = Write(note.Before), After = Write(note.After),
        });
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>Number of the first row that was changed, or before which one is missing; null where the chain is whole.</summary>
    public static async Task<long?> FirstBroken(ProgrammeDb db, CancellationToken cancellation = default)
    {
        var answers = await db.Database.SqlQuery<long?>($"SELECT lab.first_broken_audit() AS \"Value\"").ToListAsync(cancellation);
        return answers[0];
    }

    private static string? Write(object? value) => value is null ? null : JsonSerializer.Serialize(value, Json);
}
