namespace Toepan.Api.Export;

/// <summary>What a column holds; null = absent in any of them.</summary>
internal enum CellKind
{
    Text,

    /// <summary>A whole number; cells are <see cref="int"/>.</summary>
    Whole,

    /// <summary>A <see cref="double"/>.</summary>
    Number,

    /// <summary>A <see cref="bool"/>.</summary>
    Flag,
}

/// <summary>A column of a table to be taken out.</summary>
internal sealed record ExportColumn(string Name, CellKind Kind, string Unit = "")
{
    public static ExportColumn Text(string name) => new(name, CellKind.Text);

    public static ExportColumn Whole(string name, string unit = "") => new(name, CellKind.Whole, unit);

    public static ExportColumn Number(string name, string unit = "") => new(name, CellKind.Number, unit);
}

/// <summary>
/// A table to be taken out in any form, read row by row as it is written. It carries what it is inside: the query, the units and the method editions.
/// </summary>
/// <param name="Name">Name of the file, without ending.</param>
/// <param name="Columns">Columns in order.</param>
/// <param name="Rows">Cells in the order of the columns; enumerated once.</param>
/// <param name="Query">The address that asked.</param>
/// <param name="MethodEditions">Editions the figures were computed under.</param>
internal sealed record ExportTable(
    string Name, IReadOnlyList<ExportColumn> Columns, IEnumerable<object?[]> Rows, string Query, IReadOnlyList<string> MethodEditions)
{
    /// <summary>What the table says of itself, by name.</summary>
    public IReadOnlyDictionary<string, string> About => new Dictionary<string, string>
    {
        ["query"] = Query,
        ["methodEditions"] = string.Join(", ", MethodEditions),
        ["units"] = string.Join("; ", Columns.Where(column => column.Unit.Length > 0).Select(column => $"{column.Name} {column.Unit}")),
        ["program"] = ProgramVersion.Commit,
    };
}
