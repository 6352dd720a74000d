using System.Globalization;
using Npgsql;

namespace Toepan.Api.Store;

/// <summary>A row of the history as noted elsewhere earlier: its number and hash.</summary>
/// <param name="Sequence">Number of the row.</param>
/// <param name="Hash">Its hash, lower-case hexadecimal.</param>
public sealed record AuditAnchor(long Sequence, string Hash)
{
    /// <summary><c>42:9f…</c> as the command takes and the anchor file holds it; null where the text is none.</summary>
    public static AuditAnchor? Parse(string text) =>
        text.Trim().Split(':') is [var number, { Length: 64 } hash] && hash.All(char.IsAsciiHexDigitLower)
        && long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var sequence) && sequence > 0
            ? new(sequence, hash)
            : null;

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Sequence}:{Hash}");
}

/// <summary>The first row of the history that does not stand as it was written.</summary>
public sealed record AuditBreak(long Sequence, string What);

/// <summary>What a walk along the whole history found.</summary>
/// <param name="Entries">Rows that were read.</param>
/// <param name="Head">The last row; null where there is none.</param>
/// <param name="Break">The first broken link; null where the chain is whole.</param>
public sealed record AuditVerification(long Entries, AuditAnchor? Head, AuditBreak? Break);

/// <summary>
/// Walks the history from its first row to its last and computes every hash anew from the row's values. The text of a row is written out
/// here and not taken from the database's function, which whoever forges rows could have replaced with them.
/// </summary>
public static class AuditChain
{
    // The text is the one of lab.audit_text in Sql/audit.sql; a test holds both against each other.
    private const string Rows = """
        SELECT a.sequence, encode(a.previous_hash, 'hex'), encode(a.hash, 'hex'), encode(pg_catalog.sha256(pg_catalog.convert_to(
          pg_catalog.jsonb_build_array(a.sequence, pg_catalog.to_char(a.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"'),
            a.who, a.action, a.entity, a.before, a.after, pg_catalog.encode(a.previous_hash, 'hex'))::text, 'UTF8')), 'hex')
        FROM lab.audit a ORDER BY a.sequence
        """;

    /// <param name="connection">Any login that may read the history.</param>
    /// <param name="anchors">Rows noted earlier, which show a cut-off end and a chain written anew as a whole.</param>
    /// <param name="cancellation">Stops the walk.</param>
    public static async Task<AuditVerification> Verify(
        NpgsqlConnection connection, IReadOnlyCollection<AuditAnchor> anchors, CancellationToken cancellation = default)
    {
        await using (var path = new NpgsqlCommand("SET search_path = pg_catalog", connection))
        {
            await path.ExecuteNonQueryAsync(cancellation);
        }

        var noted = anchors.ToLookup(anchor => anchor.Sequence, anchor => anchor.Hash);
        var (entries, previous, broken) = (0L, "", (AuditBreak?)null);
        await using var command = new NpgsqlCommand(Rows, connection) { CommandTimeout = 0 };
        await using var rows = await command.ExecuteReaderAsync(cancellation);
        while (await rows.ReadAsync(cancellation))
        {
            var row = new Link(rows.GetInt64(0), rows.GetString(1), rows.GetString(2), rows.GetString(3));
            broken ??= Fault(row, entries + 1, previous, noted[row.Sequence]);
            (entries, previous) = (entries + 1, row.Hash);
        }

        broken ??= CutOff(entries, anchors);
        return new(entries, entries == 0 ? null : new(entries, previous), broken);
    }

    private sealed record Link(long Sequence, string Previous, string Hash, string Computed);

    private static AuditBreak? Fault(Link row, long expected, string previous, IEnumerable<string> noted)
    {
        if (row.Sequence != expected)
        {
            return row.Sequence > expected
                ? new(expected, "it is missing: deleted, or numbered otherwise")
                : new(row.Sequence, "its number is below 1: it was inserted past the chain");
        }

        if (row.Hash != row.Computed)
        {
            return new(expected, "its values do not give its hash: changed, moved, or inserted past the chain");
        }

        if (row.Previous != previous)
        {
            return new(expected, expected == 1 ? "it names a row before it, but is the first" : "it does not continue the row before it: one of the two was replaced");
        }

        return noted.Any(hash => hash != row.Hash) ? new(expected, "its hash is not the one noted earlier: the chain was written anew from here or before") : null;
    }

    private static AuditBreak? CutOff(long entries, IEnumerable<AuditAnchor> anchors) =>
        anchors.Any(anchor => anchor.Sequence > entries)
            ? new(entries + 1, "it is missing: the end was cut off, for a later row was noted earlier")
            : null;
}
