namespace Toepan.Api.Programme.Lists;

/// <summary>A row of a list, and the line it stands on.</summary>
internal sealed record CellRow(int Line, IReadOnlyList<string> Cells)
{
    public bool Blank => Cells.All(string.IsNullOrWhiteSpace);
}

/// <summary>A list as text: the first row names the columns. Exactly one of rows and fault is meaningful.</summary>
/// <param name="Rows">Rows with their lines, blank ones left out.</param>
/// <param name="Fault">Why it cannot be read as a table, or null.</param>
internal sealed record CellTable(IReadOnlyList<CellRow> Rows, string? Fault)
{
    public static CellTable Unreadable(string fault) => new([], fault);
}
