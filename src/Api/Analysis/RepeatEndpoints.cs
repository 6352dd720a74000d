using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;

namespace Toepan.Api.Analysis;

/// <summary>Runs of one vehicle side by side.</summary>
internal static class RepeatEndpoints
{
    public static void MapRepeats(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Analysis");

        group.MapGet("/repeats", Compare).OrNotFound().Describe(
            "compareRepeats", "Repeated runs of a vehicle",
            "Differences from the first run, mean, standard deviation (n − 1) and coefficient of variation of every measure; ISO/TS 18571 scores of every curve against the first run's; which parts repeat; the chance that each run's level holds.");
    }

    private static async Task<Results<Ok<RepeatsJson>, ProblemHttpResult>> Compare(
        Viewer viewer, RepeatService repeats,
        [Description("Two to four test codes of one vehicle and procedure, separated by commas; the first is the reference.")] string tests,
        CancellationToken cancellation) =>
        (await repeats.Get(viewer, Codes(tests), cancellation)).Answer(RepeatsJson.Of);

    private static string[] Codes(string tests) => tests.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
