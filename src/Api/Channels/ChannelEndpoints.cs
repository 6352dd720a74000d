using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Export;
using Toepan.Api.Security;
using Toepan.Domain.Measures;

namespace Toepan.Api.Channels;

/// <summary>Channels, their samples and what engineers decided about them.</summary>
internal static class ChannelEndpoints
{
    public static void MapChannels(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/tests/{test}", "Channels").ProducesProblem(StatusCodes.Status404NotFound);

        group.MapGet("/channels", Index).Describe("listChannels", "Channels of a run", "The index of the current package, and whether each channel can be believed.");
        group.MapGet("/channels/{code}", Samples)
            .Produces<SamplesJson>(StatusCodes.Status200OK, "application/json", MediaTypes.Csv, MediaTypes.Parquet)
            .ProducesProblem(StatusCodes.Status406NotAcceptable).ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .Describe(
                "getSamples", "Samples of a channel",
                "In the working unit, offset removed, flags applied; filtered to cfc (60, 180, 600 or 1000), or as recorded. from and to in s; points keeps each stretch's least and greatest sample. JSON, text/csv or Parquet by Accept or format=csv or parquet.");
        group.MapGet("/flags", ListFlags).Describe("listFlags", "Channel flags of a run", "Every decision about a channel, withdrawn ones too, latest first.");
        group.MapPost("/flags", AddFlag).RequireRoles(Role.Engineer, Role.Manager, Role.Administrator).Describe(
            "addFlag", "Flag a channel",
            "Engineers, managers and administrators. kind: unfit (from a time on, or wholly), polarity, or scale with a factor; a reason is required. Makes a new reduction and rating; earlier ones stay.");
        group.MapPost("/flags/{flag:long}/withdrawal", Withdraw).RequireRoles(Role.Engineer, Role.Manager, Role.Administrator)
            .ProducesProblem(StatusCodes.Status409Conflict).Describe(
                "withdrawFlag", "Withdraw a flag", "Engineers, managers and administrators. A reason is required. Makes a new reduction and rating.");
    }

    private static async Task<Results<Ok<ChannelJson[]>, ProblemHttpResult>> Index(
        Viewer viewer, ChannelService channels, string test, CancellationToken cancellation) =>
        (await channels.Index(viewer, test, cancellation)).Answer(list => list.Select(ChannelJson.Of).ToArray());

    private static async Task<IResult> Samples(
        Viewer viewer, ChannelService channels, HttpRequest request, string test, string code,
        [Description("60, 180, 600 or 1000; left out: as recorded.")] int? cfc,
        [Description("From this time on, s.")] double? from,
        [Description("To this time, s, inclusive.")] double? to,
        [Description("At most this many points, 10 to 100000.")] int? points,
        CancellationToken cancellation)
    {
        if (MediaTypes.Choose(request, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Parquet) is not { } chosen)
        {
            return MediaTypes.NotAcceptable(MediaTypes.Json, MediaTypes.Csv, MediaTypes.Parquet);
        }

        var outcome = await channels.Samples(viewer, test, code, new SampleQuery(cfc, from, to, points), cancellation);
        return outcome.Value is not { } samples ? outcome.Failure!.ToProblem()
            : chosen == MediaTypes.Parquet ? new ExportResult(SampleExport.Of(test, samples, request.Path + request.QueryString.ToString()), chosen)
            : chosen == MediaTypes.Csv ? TypedResults.Text(SampleCsv.Write(samples), MediaTypes.Csv, System.Text.Encoding.UTF8)
            : TypedResults.Ok(SamplesJson.Of(samples));
    }

    private static async Task<Results<Ok<FlagJson[]>, ProblemHttpResult>> ListFlags(
        Viewer viewer, ChannelFlagService flags, string test, CancellationToken cancellation) =>
        (await flags.List(viewer, test, cancellation)).Answer(list => list.Select(FlagJson.Of).ToArray());

    private static async Task<Results<Created<FlagResultJson>, ProblemHttpResult>> AddFlag(
        Viewer viewer, ChannelFlagService flags, string test, NewFlagJson body, CancellationToken cancellation) =>
        Kind(body.Kind) is { } kind
            ? (await flags.Add(viewer, test, new NewFlag(body.Channel ?? "", kind, body.From, body.Factor, body.Reason ?? ""), cancellation))
                .AnswerCreated(_ => $"/api/v1/tests/{test}/flags", FlagResultJson.Of)
            : Failure.BadRequest($"kind is '{body.Kind}'; it is one of {string.Join(", ", Kinds.Keys)}.").ToProblem();

    private static async Task<Results<Ok<FlagResultJson>, ProblemHttpResult>> Withdraw(
        Viewer viewer, ChannelFlagService flags, string test, long flag, WithdrawalJson body, CancellationToken cancellation) =>
        (await flags.Withdraw(viewer, test, flag, body.Reason ?? "", cancellation)).Answer(FlagResultJson.Of);

    private static readonly SortedDictionary<string, ChannelFlagKind> Kinds = new(StringComparer.Ordinal)
    {
        ["polarity"] = ChannelFlagKind.Polarity,
        ["scale"] = ChannelFlagKind.Scale,
        ["unfit"] = ChannelFlagKind.Unfit,
    };

    private static ChannelFlagKind? Kind(string? word) => word is not null && Kinds.TryGetValue(word, out var kind) ? kind : null;
}
