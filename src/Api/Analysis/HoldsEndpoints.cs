using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;

namespace Toepan.Api.Analysis;

/// <summary>Whether a rating would come out the same again, and what it rests on.</summary>
internal static class HoldsEndpoints
{
    public static void MapHolds(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/tests/{test}", "Analysis");

        group.MapGet("/holds", Holds).OrNotFound().Describe(
            "getHolds", "Chance that a rating holds",
            "Chance that each region and the overall level come out the same in a repeated run, by 10 000 seeded draws: each figure scattering for itself, and all together. What a repeat would be worth, beside the cost of a vehicle where one is given.");
        group.MapGet("/sensitivity", Sensitivity).OrNotFound().Describe(
            "getSensitivity", "What would change a rating",
            "How far each figure would have to move, alone, to make the overall level worse or better; and what the impact speed could explain.");
        group.MapGet("/keystones", Keystones).OrNotFound().Describe(
            "getKeystones", "What a rating rests on",
            "Each transducer and each reference point left out in turn, reduced and rated again: effect none, certain (not rated, but no value could change the level), open (the level could be another) or other (it is another).");
    }

    private static async Task<Results<Ok<HoldsJson>, ProblemHttpResult>> Holds(
        Viewer viewer, HoldsService holds, string test, [Description("Cost of a vehicle in any currency, above zero; left out: not given.")] double? vehicleCost,
        CancellationToken cancellation) =>
        (await holds.Holds(viewer, test, vehicleCost, cancellation)).Answer(HoldsJson.Of);

    private static async Task<Results<Ok<SensitivityJson>, ProblemHttpResult>> Sensitivity(
        Viewer viewer, HoldsService holds, string test, CancellationToken cancellation) =>
        (await holds.Sensitivity(viewer, test, cancellation)).Answer(SensitivityJson.Of);

    private static async Task<Results<Ok<KeystonesJson>, ProblemHttpResult>> Keystones(
        Viewer viewer, HoldsService holds, string test, CancellationToken cancellation) =>
        (await holds.Keystones(viewer, test, cancellation)).Answer(KeystonesJson.Of);
}
