using System.Security.Cryptography;
using System.Text.Json;
using Toepan.Api.Programme.Lists;
using Toepan.Api.Programme.Tables;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>Holds a list against the vehicles there are. A column left out leaves its values, an empty cell clears one.</summary>
internal sealed class VehicleImportPlan(IReadOnlyDictionary<string, VehicleRow> known, IReadOnlySet<string> classes)
{
    public const int MostRows = 5_000;
    private readonly HashSet<string> seen = [];
    private readonly List<(string Key, VehicleFacts Facts)> writes = [];

    /// <summary>Facts to write, for the rows that change something.</summary>
    public IReadOnlyList<(string Key, VehicleFacts Facts)> Writes => writes;

    /// <summary>Why the table as a whole cannot be read, or null.</summary>
    public static string? Fault(CellTable table)
    {
        if (table.Fault is not null || table.Rows.Count == 0)
        {
            return table.Fault ?? "The list is empty; its first row names the columns.";
        }

        var columns = Header(table);
        var unknown = columns.Where(column => !VehicleText.Columns.Contains(column)).ToList();
        return columns switch
        {
            _ when unknown.Count > 0 => $"Unknown columns: {string.Join(", ", unknown)}. There are {string.Join(", ", VehicleText.Columns)}.",
            _ when columns.Distinct().Count() != columns.Count => "A column stands twice.",
            _ when !columns.Contains(VehicleText.Key) => $"The column '{VehicleText.Key}' is missing.",
            _ when table.Rows.Count - 1 > MostRows => $"The list has {table.Rows.Count - 1} rows; at most {MostRows} are taken.",
            _ => null,
        };
    }

    public VehicleImport Of(CellTable table)
    {
        var columns = Header(table);
        IReadOnlyList<ImportedRow> rows = [.. table.Rows.Skip(1).Select(row => Row(columns, row))];
        return new VehicleImport(rows, Digest(rows), Applied: false);
    }

    private static List<string> Header(CellTable table) => [.. table.Rows[0].Cells.Select(cell => cell.Trim()).Reverse().SkipWhile(cell => cell.Length == 0).Reverse()];

    private ImportedRow Row(List<string> columns, CellRow row)
    {
        var given = columns.Zip(row.Cells.Concat(Enumerable.Repeat("", columns.Count))).ToDictionary(pair => pair.First, pair => pair.Second.Trim());
        var key = given[VehicleText.Key];
        given.Remove(VehicleText.Key);
        var existing = known.GetValueOrDefault(key);
        var before = existing is null ? new Dictionary<string, string>() : VehicleText.Write(existing.Facts());
        var (facts, faults) = VehicleText.Read(Merged(before, given));
        faults = [.. faults, .. Faults(key, row, columns, facts)];
        var after = VehicleText.Write(facts);
        var changes = after.Where(pair => pair.Value != before.GetValueOrDefault(pair.Key, ""))
            .Select(pair => new ImportedValue(pair.Key, before.GetValueOrDefault(pair.Key, ""), pair.Value)).ToList();
        var act = faults.Count > 0 ? ImportAct.Refused : existing is null ? ImportAct.Added : changes.Count > 0 ? ImportAct.Changed : ImportAct.Unchanged;
        if (act is ImportAct.Added or ImportAct.Changed)
        {
            writes.Add((key, facts));
        }

        return new ImportedRow(row.Line, key, act, act == ImportAct.Refused ? [] : changes, faults);
    }

    private IEnumerable<string> Faults(string key, CellRow row, List<string> columns, VehicleFacts facts)
    {
        if (VehicleEditor.CheckKey(key) is { } fault)
        {
            yield return fault.Detail;
        }
        else if (!seen.Add(key))
        {
            yield return $"'{key}' stands on an earlier line already.";
        }

        if (row.Cells.Skip(columns.Count).Any(cell => cell.Trim().Length > 0))
        {
            yield return $"The row has more cells than the header has columns ({columns.Count}).";
        }

        if (!classes.Contains(facts.Class))
        {
            yield return facts.Class.Length == 0 ? "A class is needed." : $"There is no class '{facts.Class}'.";
        }
    }

    private static Dictionary<string, string> Merged(IReadOnlyDictionary<string, string> before, Dictionary<string, string> given)
    {
        var merged = new Dictionary<string, string>(before);
        foreach (var (column, text) in given)
        {
            merged[column] = text;
        }

        return merged;
    }

    private static string Digest(IReadOnlyList<ImportedRow> rows) => Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(rows)));
}
