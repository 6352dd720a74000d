using System.Text.Json;

namespace Toepan.Api.Store;

/// <summary>An entry of the history as the contract writes it.</summary>
internal sealed record AuditEntryJson(
    long Sequence, DateTimeOffset At, string Who, string Action, string Entity, JsonElement? Before, JsonElement? After, string PreviousHash, string Hash)
{
    public static AuditEntryJson Of(AuditEntry entry) => new(
        entry.Sequence, entry.At, entry.Who, entry.Action, entry.Entity, Element(entry.Before), Element(entry.After), entry.PreviousHash, entry.Hash);

    private static JsonElement? Element(string? json) => json is null ? null : JsonElement.Parse(json);
}

/// <summary>A page of entries, latest first.</summary>
internal sealed record AuditPageJson(IReadOnlyList<AuditEntryJson> Entries, long? Older)
{
    public static AuditPageJson Of(AuditPage page) => new([.. page.Entries.Select(AuditEntryJson.Of)], page.Older);
}

/// <summary>What a walk along the chain found.</summary>
internal sealed record AuditVerificationJson(bool Whole, long Entries, string? Head, long? BrokenAt, string? What)
{
    public static AuditVerificationJson Of(AuditVerification found) => new(
        found.Break is null, found.Entries, found.Head?.ToString(), found.Break?.Sequence, found.Break?.What);
}
