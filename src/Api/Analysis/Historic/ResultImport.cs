using Toepan.Domain.Packages;

namespace Toepan.Api.Analysis.Historic;

/// <summary>How to take a file of historic results in.</summary>
/// <param name="DryRun">Say what would be, store nothing.</param>
/// <param name="Replaces">Number of the batch it takes the place of, or null.</param>
/// <param name="Reason">Why; required with <paramref name="Replaces"/>.</param>
public sealed record ResultOptions(bool DryRun = false, long? Replaces = null, string? Reason = null);

/// <summary>What a file of historic results came to, or would.</summary>
/// <param name="Batch">Number of the batch it became; null where nothing was stored.</param>
/// <param name="Created">Tests it brought (of a dry run: would bring).</param>
/// <param name="Unchanged">Tests that were there with the same content.</param>
/// <param name="Rows">Rows read.</param>
/// <param name="Values">Values of the tests it brought.</param>
/// <param name="Sha256">SHA-256 of the bytes.</param>
/// <param name="DryRun">Whether nothing was stored because nothing was to be.</param>
/// <param name="Problems">Warnings and notes, with line and column.</param>
public sealed record ResultImport(
    long? Batch, int Created, int Unchanged, int Rows, int Values, string Sha256, bool DryRun, IReadOnlyList<Problem> Problems)
{
    /// <summary>Classes it makes the programme know.</summary>
    public IReadOnlyList<string> CreatedClasses { get; init; } = [];

    /// <summary>Procedures it makes the programme know, as names alone.</summary>
    public IReadOnlyList<string> CreatedProcedures { get; init; } = [];

    /// <summary>Vehicles it makes the programme know.</summary>
    public IReadOnlyList<string> CreatedVehicles { get; init; } = [];

    /// <summary>The batch that counts no longer because of it, or null.</summary>
    public long? Replaced { get; init; }
}

/// <summary>A batch of historic results.</summary>
/// <param name="Withdrawn">When and why it ceased to count; null while it does.</param>
public sealed record ResultBatch(
    long Id, DateTimeOffset At, string By, int Tests, int Values, string Sha256, long? Replaces, string? Reason, Withdrawal? Withdrawn);

/// <summary>Why a batch counts no longer.</summary>
public sealed record Withdrawal(DateTimeOffset At, string By, string Reason);

/// <summary>A summary result in a list.</summary>
public sealed record SummaryResult(
    string Test, long Batch, string Vehicle, string? Make, string? Model, string Class, int? ModelYear, string Procedure, DateOnly? Date, double? TestMassKg,
    IReadOnlyList<SummaryOccupant> Occupants, int Values);

/// <summary>A dummy of a summary result; its code may not be recorded.</summary>
public sealed record SummaryOccupant(int Position, string? Dummy);

/// <summary>One page of the summary results that count.</summary>
public sealed record SummaryPage(IReadOnlyList<SummaryResult> Results, int Total, int Page, int PageSize);

/// <summary>Which summary results to list; null = any.</summary>
public sealed record SummaryFilter(string? Class = null, string? Vehicle = null, string? Test = null, long? Batch = null, int Page = 1);
