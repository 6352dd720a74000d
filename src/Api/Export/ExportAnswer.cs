using Microsoft.AspNetCore.Http;

namespace Toepan.Api.Export;

/// <summary>A value in the form the request wants: JSON, or its table as CSV, spreadsheet or Parquet.</summary>
internal static class ExportAnswer
{
    /// <param name="request">What Accept or format= says.</param>
    /// <param name="outcome">The value, or why there is none.</param>
    /// <param name="json">The value as the contract writes it.</param>
    /// <param name="table">Its table; given the address that asked.</param>
    public static IResult In<T, TJson>(HttpRequest request, Outcome<T> outcome, Func<T, TJson> json, Func<T, string, ExportTable> table)
        where T : class => MediaTypes.Choose(request, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet) is not { } chosen
            ? MediaTypes.NotAcceptable(MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet)
            : outcome.Value is not { } value ? outcome.Failure!.ToProblem()
            : chosen == MediaTypes.Json ? TypedResults.Ok(json(value))
            : new ExportResult(table(value, request.Path + request.QueryString.ToString()), chosen);
}
