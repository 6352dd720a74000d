using Toepan.Api;
using Toepan.Api.Channels;
using Toepan.Api.Measures;
using Toepan.Api.Packages.Attachments;
using Toepan.Api.Programme;
using Toepan.Api.Ratings;
using Toepan.Api.Security;

namespace Toepan.Web.Pages.Programme;

/// <summary>Asks every feature service for its part of one run. Only a missing run fails the page; a missing part is said in its place.</summary>
public sealed class TestRunLoader(
    TestRunService tests, VehicleClassService classes, MeasureService measures, FindingService findings, RatingService ratings, ChannelFlagService flags,
    ChannelService channels, PlotService plots, FilmService films, ProgrammeRules rules)
{
    public async Task<Outcome<TestRunView>> Load(Viewer viewer, string test, CancellationToken cancellation)
    {
        var found = await tests.Get(viewer, test, cancellation);
        if (found.Value is not { } detail)
        {
            return found.Failure!;
        }

        var refusals = new List<string>();
        var classKey = detail.Run.Vehicle.Class;
        var title = Take(await classes.List(viewer, cancellation), refusals)?.FirstOrDefault(c => c.Key == classKey)?.Title ?? classKey;
        var evidence = Take(await ratings.Explained(viewer, test, null, cancellation), refusals);
        var rating = evidence?.Rating;
        return new TestRunView(
            detail,
            title,
            Take(await measures.Get(viewer, test, null, cancellation), refusals) ?? [],
            Take(await measures.Structure(viewer, test, cancellation), refusals),
            Take(await findings.List(viewer, test, all: true, cancellation), refusals) ?? [],
            rating,
            rules.FindScheme(rating?.Scheme ?? "") ?? rules.DefaultScheme,
            Take(await measures.Reductions(viewer, test, cancellation), refusals) ?? [],
            Take(await flags.List(viewer, test, cancellation), refusals) ?? [],
            Take(await channels.Index(viewer, test, cancellation), refusals) ?? [],
            Take(await plots.Daily(viewer, test, cancellation), refusals)?.Sets ?? [],
            Take(await films.List(viewer, test, cancellation), refusals) ?? [],
            refusals)
        {
            Evidence = evidence,
        };
    }

    private static T? Take<T>(Outcome<T> outcome, List<string> refusals)
        where T : class
    {
        if (outcome.Failure is { } failure)
        {
            refusals.Add(failure.Detail);
        }

        return outcome.Value;
    }
}
