namespace Toepan.Api.Store;

/// <summary>One thing somebody did.</summary>
/// <param name="Sequence">1, 2, 3 …</param>
/// <param name="Before">JSON of what was, or null.</param>
/// <param name="After">JSON of what is, or null.</param>
/// <param name="Hash">Hash of the row, lower-case hexadecimal.</param>
public sealed record AuditEntry(
    long Sequence, DateTimeOffset At, string Who, string Action, string Entity, string? Before, string? After, string PreviousHash, string Hash);

/// <summary>Which entries are asked for; nothing given = all.</summary>
/// <param name="Who">Name in full.</param>
/// <param name="Action">Word or words in full.</param>
/// <param name="Entity">Kind and key, or how they begin, e.g. <c>test/FO-0042</c> or <c>vehicle/</c>.</param>
/// <param name="From">From this instant on.</param>
/// <param name="To">Before this instant.</param>
public sealed record AuditFilter(string? Who = null, string? Action = null, string? Entity = null, DateTimeOffset? From = null, DateTimeOffset? To = null);

/// <summary>A page of entries, latest first.</summary>
/// <param name="Entries">The entries.</param>
/// <param name="Older">What to ask <c>before</c> for the next page; null where this is the last.</param>
public sealed record AuditPage(IReadOnlyList<AuditEntry> Entries, long? Older);

/// <summary>What the filter can be set to.</summary>
public sealed record AuditWords(IReadOnlyList<string> Who, IReadOnlyList<string> Actions);
