using System.ComponentModel;
using System.IO.Compression;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;
using Toepan.Api.Security;

namespace Toepan.Api.Analysis.Traces;

/// <summary>What the channel viewer asks for.</summary>
internal static class TraceEndpoints
{
    private const string Grammar =
        "A trace is TEST/CODE@CLASS (60, 180, 600, 1000, or raw), or res(…), int(a[,start]), diff(a,b), sum(…), mean(…), neg(a), scale(a,k), condyle(My,Fx), tibia(Mx,My,Fz) of traces, then ~ms for a shift.";

    public static void MapTraces(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/traces", "Analysis").ProducesProblem(StatusCodes.Status404NotFound);
        group.MapGet("", Traces)
            .Produces(StatusCodes.Status200OK, contentType: TraceBinary.MediaType, additionalContentTypes: MediaTypes.Csv)
            .ProducesProblem(StatusCodes.Status406NotAcceptable)
            .Describe(
                "getTraces", "Traces of a view",
                Grammar + " Bytes: 'TPT1', uint32 header length, JSON header padded to 4, then float32 values, little-endian: of every pixel column the least and greatest sample in order of time, or all samples where they are fewer. By Accept or format=csv every sample of the window as text/csv.");
        group.MapGet("/values", Values).Describe(
            "getTraceValues", "Values at instants", Grammar + " For each instant (at, s) the nearest sample's time and value in full precision.");
    }

    private static async Task<IResult> Traces(
        Viewer viewer, TraceService service, HttpRequest request,
        [Description("A trace; several times for several.")] string[] t,
        [Description("Window from, s.")] double? from,
        [Description("Window to, s.")] double? to,
        [Description("Pixel columns, 10 to 4000; 1000 unless said.")] int? columns,
        [Description("Whether windows, peaks and limits are wanted; true unless said.")] bool? marks,
        CancellationToken cancellation)
    {
        if (MediaTypes.Choose(request, TraceBinary.MediaType, MediaTypes.Csv) is not { } chosen)
        {
            return MediaTypes.NotAcceptable(TraceBinary.MediaType, MediaTypes.Csv);
        }

        var query = TraceQuery.Read(t, from, to, columns, marks);
        var outcome = query.Value is { } asked ? await service.Get(viewer, asked, cancellation) : query.Failure!;
        return outcome.Value is not { } set ? outcome.Failure!.ToProblem()
            : chosen == MediaTypes.Csv ? TypedResults.Stream(stream => TraceCsv.Write(set, stream, cancellation), MediaTypes.Csv, "traces.csv")
            : Bytes(request, TraceBinary.Write(set));
    }

    private static async Task<Results<Ok<TraceValues[]>, ProblemHttpResult>> Values(
        Viewer viewer, TraceService service,
        [Description("A trace; several times for several.")] string[] t,
        [Description("An instant, s; several times for several.")] double[] at,
        CancellationToken cancellation)
    {
        var query = TraceQuery.Read(t, null, null);
        var outcome = query.Value is { } asked ? await service.Values(viewer, asked, at, cancellation) : new(null, query.Failure);
        return outcome.Answer(values => values.ToArray());
    }

    private static FileContentHttpResult Bytes(HttpRequest request, byte[] bytes)
    {
        var response = request.HttpContext.Response;
        response.Headers.Vary = $"{HeaderNames.Accept}, {HeaderNames.AcceptEncoding}";
        if (!request.Headers.AcceptEncoding.ToString().Contains("gzip", StringComparison.OrdinalIgnoreCase))
        {
            return TypedResults.Bytes(bytes, TraceBinary.MediaType);
        }

        var packed = new MemoryStream(bytes.Length);
        using (var zip = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            zip.Write(bytes);
        }

        response.Headers.ContentEncoding = "gzip";
        return TypedResults.Bytes(packed.ToArray(), TraceBinary.MediaType);
    }
}
