namespace Toepan.Api.Programme;

/// <summary>What a row of a vehicle list comes to.</summary>
public enum ImportAct
{
    /// <summary>The vehicle is new.</summary>
    Added,

    /// <summary>Some of its values change.</summary>
    Changed,

    /// <summary>It is as the row says already.</summary>
    Unchanged,

    /// <summary>The row cannot be taken; with it the whole list.</summary>
    Refused,
}

/// <summary>One value a row changes; empty = absent.</summary>
public sealed record ImportedValue(string Column, string Before, string After);

/// <summary>One row of a list.</summary>
/// <param name="Line">Its line in the file.</param>
/// <param name="Vehicle">Vehicle key.</param>
/// <param name="Act">What it comes to.</param>
/// <param name="Changes">What it changes.</param>
/// <param name="Faults">Why it is refused.</param>
public sealed record ImportedRow(int Line, string Vehicle, ImportAct Act, IReadOnlyList<ImportedValue> Changes, IReadOnlyList<string> Faults);

/// <summary>What a vehicle list changes.</summary>
/// <param name="Rows">Row by row.</param>
/// <param name="Digest">SHA-256 over what would change; an import that names it is refused where meanwhile something else would.</param>
/// <param name="Applied">Whether it was done.</param>
public sealed record VehicleImport(IReadOnlyList<ImportedRow> Rows, string Digest, bool Applied)
{
    public bool Acceptable => Rows.All(row => row.Act != ImportAct.Refused);

    public int Count(ImportAct act) => Rows.Count(row => row.Act == act);
}

/// <summary>A list as received.</summary>
/// <param name="Bytes">The file.</param>
/// <param name="Spreadsheet">xlsx; else CSV.</param>
/// <param name="DryRun">Only say what would change.</param>
/// <param name="Digest">Digest of the dry run the person saw, or null.</param>
public sealed record IncomingList(byte[] Bytes, bool Spreadsheet, bool DryRun, string? Digest);
