namespace Toepan.Domain.Analysis.Historic;

/// <summary>How much a file of historic results may hold. Our own bounds, no source.</summary>
public sealed record HistoricLimits
{
    public static HistoricLimits Default { get; } = new();

    public long MaxBytes { get; init; } = 32 << 20;

    public int MaxRows { get; init; } = 20_000;

    public int MaxColumns { get; init; } = 400;

    /// <summary>Longest text of a cell, characters.</summary>
    public int LongestText { get; init; } = 100;
}
