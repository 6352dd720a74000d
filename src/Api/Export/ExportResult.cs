using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Packages;

namespace Toepan.Api.Export;

/// <summary>Answers with a table as CSV, spreadsheet or Parquet, written while it is read: constant memory, ended when the reader leaves.</summary>
internal sealed class ExportResult(ExportTable table, string mediaType) : IResult
{
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var (response, left) = (httpContext.Response, httpContext.RequestAborted);
        response.ContentType = mediaType == MediaTypes.Csv ? $"{MediaTypes.Csv}; charset=utf-8" : mediaType;
        response.Headers.ContentDisposition = $"attachment; filename=\"{table.Name}.{Ending}\"";
        switch (mediaType)
        {
            case MediaTypes.Csv:
                await CsvExport.Write(table, response.Body, left);
                break;
            case MediaTypes.Parquet:
                await ParquetExport.Write(table, response.Body, left);
                break;
            default:
                await using (var file = httpContext.RequestServices.GetRequiredService<UploadSpool>().Create())
                {
                    await SheetExport.Write(table, file, left);
                    file.Position = 0;
                    await file.CopyToAsync(response.Body, left);
                }

                break;
        }
    }

    private string Ending => mediaType switch { MediaTypes.Csv => "csv", MediaTypes.Parquet => "parquet", _ => "xlsx" };
}
