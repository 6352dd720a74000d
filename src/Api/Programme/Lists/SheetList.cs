using System.Globalization;
using System.IO.Compression;
using System.Xml;
using MiniExcelLibs;

namespace Toepan.Api.Programme.Lists;

/// <summary>Lists as a spreadsheet (xlsx): the first sheet, a header row, every cell written as text.</summary>
internal static class SheetList
{
    private const long LargestExpanded = 64L << 20;

    public static byte[] Write(IReadOnlyList<IReadOnlyList<string>> rows)
    {
        var header = rows[0];
        var records = rows.Skip(1).Select(row => header.Zip(row).ToDictionary(pair => pair.First, pair => (object)SafeCell.Write(pair.Second))).ToList();
        if (records.Count == 0)
        {
            records.Add(header.ToDictionary(column => column, _ => (object)""));
        }

        using var stream = new MemoryStream();
        stream.SaveAs(records, sheetName: "vehicles");
        return stream.ToArray();
    }

    public static CellTable Read(byte[] bytes)
    {
        try
        {
            if (Expanded(bytes) > LargestExpanded)
            {
                return CellTable.Unreadable("The spreadsheet unpacks to more than 64 MiB.");
            }

            using var stream = new MemoryStream(bytes);
            var rows = stream.Query(useHeaderRow: false, excelType: ExcelType.XLSX).Cast<IDictionary<string, object?>>()
                .Select((row, at) => new CellRow(at + 1, [.. row.Values.Select(Text)]));
            return new([.. rows.Where(row => !row.Blank)], null);
        }
        catch (Exception broken) when (broken is InvalidDataException or XmlException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            return CellTable.Unreadable("The file is not a spreadsheet that can be read (xlsx).");
        }
    }

    // Declared sizes can lie; the stream that unpacks an entry stops at its declared size.
    private static long Expanded(byte[] bytes)
    {
        using var archive = new ZipArchive(new MemoryStream(bytes), ZipArchiveMode.Read);
        return archive.Entries.Sum(entry => entry.Length);
    }

    private static string Text(object? cell) => cell switch
    {
        null => "",
        DateTime date => date.ToString(date.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd" : "yyyy-MM-dd'T'HH:mm:ss", CultureInfo.InvariantCulture),
        string text => SafeCell.Read(text),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => cell.ToString() ?? "",
    };
}
