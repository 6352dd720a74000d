using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Toepan.Api.Store;

/// <summary>The history as a file, written entry by entry while it is read.</summary>
public static class AuditExport
{
    private const string Header = "sequence,at,who,action,entity,before,after,previousHash,hash\r\n";

    /// <summary>CSV (RFC 4180); before and after as JSON text. A cell that a spreadsheet would take for a formula starts with an apostrophe.</summary>
    public static async Task WriteCsv(TextWriter writer, IAsyncEnumerable<AuditEntry> entries, CancellationToken cancellation)
    {
        await writer.WriteAsync(Header.AsMemory(), cancellation);
        await foreach (var entry in entries.WithCancellation(cancellation))
        {
            string?[] cells =
            [
                entry.Sequence.ToString(CultureInfo.InvariantCulture), Time(entry.At), entry.Who, entry.Action, entry.Entity, entry.Before, entry.After,
                entry.PreviousHash, entry.Hash,
            ];
            await writer.WriteAsync((string.Join(',', cells.Select(Cell)) + "\r\n").AsMemory(), cancellation);
        }
    }

    /// <summary>JSON lines: one object a line, before and after as JSON.</summary>
    public static async Task WriteJsonLines(TextWriter writer, IAsyncEnumerable<AuditEntry> entries, CancellationToken cancellation)
    {
        await foreach (var entry in entries.WithCancellation(cancellation))
        {
            var line = new JsonObject
            {
                ["sequence"] = entry.Sequence, ["at"] = Time(entry.At), ["who"] = entry.Who, ["action"] = entry.Action, ["entity"] = entry.Entity,
                ["before"] = Node(entry.Before), ["after"] = Node(entry.After), ["previousHash"] = entry.PreviousHash, ["hash"] = entry.Hash,
            };
            await writer.WriteAsync((line.ToJsonString(JsonSerializerOptions.Web) + "\n").AsMemory(), cancellation);
        }
    }

    private static JsonNode? Node(string? json) => json is null ? null : JsonNode.Parse(json);

    private static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'", CultureInfo.InvariantCulture);

    private static string Cell(string? text)
    {
        var safe = text is ['=' or '+' or '-' or '@' or '\t' or '\r', ..] ? "'" + text : text ?? "";
        return safe.AsSpan().IndexOfAny(",\"\r\n") >= 0 ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
    }
}
