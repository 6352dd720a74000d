using Parquet;
using Parquet.Schema;

namespace Toepan.Api.Export;

/// <summary>A table as Parquet: query, units and method editions stand in the key-value metadata of the file; a row group is at most <see cref="GroupRows"/> rows.</summary>
internal static class ParquetExport
{
    public const int GroupRows = 10_000;

    public static async Task Write(ExportTable table, Stream target, CancellationToken cancellation)
    {
        DataField[] fields = [.. table.Columns.Select(Field)];
        await using var forward = new ForwardStream(target);
        await using (var writer = await ParquetWriter.CreateAsync(new ParquetSchema(fields), forward, cancellationToken: cancellation))
        {
            writer.CustomMetadata = new Dictionary<string, string>(table.About);
            foreach (var rows in table.Rows.Chunk(GroupRows))
            {
                using var group = writer.CreateRowGroup();
                for (var i = 0; i < fields.Length; i++)
                {
                    await WriteColumn(group, fields[i], table.Columns[i].Kind, rows, i, cancellation);
                }

                group.CompleteValidate();
                await forward.FlushAsync(cancellation);
            }
        }

        await forward.FlushAsync(cancellation);
    }

    private static DataField Field(ExportColumn column) => column.Kind switch
    {
        CellKind.Whole => new DataField<int>(column.Name, nullable: true),
        CellKind.Number => new DataField<double>(column.Name, nullable: true),
        CellKind.Flag => new DataField<bool>(column.Name, nullable: true),
        _ => new DataField<string>(column.Name, nullable: true),
    };

    private static async Task WriteColumn(ParquetRowGroupWriter group, DataField field, CellKind kind, object?[][] rows, int column, CancellationToken cancellation)
    {
        switch (kind)
        {
            case CellKind.Whole:
                await group.WriteAsync<int>(field, Array.ConvertAll(rows, row => (int?)row[column]), cancellationToken: cancellation);
                break;
            case CellKind.Number:
                await group.WriteAsync<double>(field, Array.ConvertAll(rows, row => (double?)row[column]), cancellationToken: cancellation);
                break;
            case CellKind.Flag:
                await group.WriteAsync<bool>(field, Array.ConvertAll(rows, row => (bool?)row[column]), cancellationToken: cancellation);
                break;
            default:
                await group.WriteAsync(field, Array.ConvertAll(rows, row => (string?)row[column])!);
                break;
        }
    }
}
