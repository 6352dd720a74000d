using System.Net;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Recomputations;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Api.Tests.Packages;
using Toepan.Api.Tests.Store;
using Toepan.Domain.Measures;
using Toepan.Support;

namespace Toepan.Api.Tests.Ratings;

/// <summary>Recomputations: released ratings stay, work stops and goes on, another method edition is compared and promoted.</summary>
public sealed class RecomputationTests(PostgresFixture postgres)
{
    private const string Key = "offset-frontal-2";

    /// <summary>FO-0002 stands for a run with a released sheet.</summary>
    private sealed class OneReleased : IReleasedRuns
    {
        public Task<IReadOnlySet<string>> Among(ProgrammeDb context, IReadOnlyCollection<string> tests, CancellationToken cancellation) =>
            Task.FromResult<IReadOnlySet<string>>(tests.Where(test => test == "FO-0002").ToHashSet());
    }

    [Fact]
    public async Task Adopt_ReleasedRun_KeepsItsRatingAndSaysWhatItWouldNowBe()
    {
        await using var api = await ApiHost.Start(postgres, services => services.Replace(ServiceDescriptor.Singleton<IReleasedRuns>(new OneReleased())));
        using var lab = await api.Machine(Role.Manager, Role.Engineer);
        await lab.Upload(TestPackages.Zip(2));
        await lab.Upload(TestPackages.Zip(3));
        var before = (await lab.Read("/api/v1/tests/FO-0002/rating")).Json;
        await lab.Bring(SchemeClient.Strict());

        var adopted = await lab.Act($"/api/v1/schemes/{Key}/adopt", new { confirm = Key, reason = "stricter" });
        var done = await lab.WaitFor(adopted.Json.GetProperty("id").GetInt64(), "finished");

        Assert.Equal(1, done.GetProperty("summary").GetProperty("released").GetInt32());
        var after = (await lab.Read("/api/v1/tests/FO-0002/rating")).Json;
        Assert.Equal(("offset-frontal-1", before.GetProperty("overall").GetString()), (after.GetProperty("scheme").GetString(), after.GetProperty("overall").GetString()));
        Assert.Equal(Key, after.GetProperty("wouldNowBe").GetProperty("scheme").GetString());
        Assert.Equal(
            (await lab.Read($"/api/v1/tests/FO-0002/rating?scheme={Key}")).Json.GetProperty("overall").GetString(), after.GetProperty("wouldNowBe").GetProperty("overall").GetString());
        Assert.Equal(Key, (await lab.Read("/api/v1/tests/FO-0003/rating")).Text("scheme"));
        Assert.Equal(1L, await Sql.Scalar(api.Connections.Owner, "SELECT count(*) FROM lab.current_rating WHERE test = 'FO-0002'"));
    }

    /// <summary>An adoption overtakes the one before it; what was stopped by it cannot be resumed.</summary>
    [Fact]
    public async Task StopAndResume_OnlyWhereItStandsSo()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Manager, Role.Engineer);
        await lab.Upload(TestPackages.Zip(2));
        await lab.Bring(SchemeClient.Strict());
        var id = (await lab.Act($"/api/v1/schemes/{Key}/adopt", new { confirm = Key, reason = "stricter" })).Json.GetProperty("id").GetInt64();
        await lab.WaitFor(id, "finished");

        Assert.Equal(HttpStatusCode.Conflict, (await lab.Act($"/api/v1/recomputations/{id}/stop")).Status);
        Assert.Equal(HttpStatusCode.Conflict, (await lab.Act($"/api/v1/recomputations/{id}/resume")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await lab.Act("/api/v1/recomputations/999/stop")).Status);

        // A recomputation written as begun and stopped, as an earlier adoption would have left it.
        await Sql.Execute(
            api.Connections.Service,
            "INSERT INTO lab.recomputation (kind, scheme, scheme_sha256, method_edition, reason, at, by) "
            + "SELECT 'Scheme', key, sha256, '1', 'r', now(), 'x' FROM lab.scheme_edition WHERE key = 'offset-frontal-1'; "
            + "INSERT INTO lab.recomputation_event (recomputation_id, event, at, by) SELECT max(id), 'Stopped', now(), 'x' FROM lab.recomputation");
        Assert.Equal(HttpStatusCode.Conflict, (await lab.Act($"/api/v1/recomputations/{id + 1}/resume")).Status);
    }

    /// <summary>Goes on with what is left when it is resumed: the step of each run is there exactly once.</summary>
    [Fact]
    public async Task Resume_StoppedWork_FinishesWhatIsLeft()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Manager, Role.Engineer);
        foreach (var number in new[] { 2, 3 })
        {
            await lab.Upload(TestPackages.Zip(number));
        }

        await lab.Bring(SchemeClient.Strict());
        await Sql.Execute(
            api.Connections.Service,
            $"INSERT INTO lab.scheme_adoption (key, sha256, reason, at, by) SELECT key, sha256, 'r', now(), 'x' FROM lab.scheme_edition WHERE key = '{Key}'; "
            + $"WITH r AS (INSERT INTO lab.recomputation (kind, scheme, scheme_sha256, method_edition, reason, at, by) SELECT 'Scheme', key, sha256, '1', 'r', now(), 'x' FROM lab.scheme_edition WHERE key = '{Key}' RETURNING id), "
            + "i AS (INSERT INTO lab.recomputation_item (recomputation_id, test) SELECT r.id, t.test FROM r, lab.test_run t) "
            + "INSERT INTO lab.recomputation_event (recomputation_id, event, at, by) SELECT id, 'Stopped', now(), 'x' FROM r");
        Assert.Equal("offset-frontal-1", (await lab.Read("/api/v1/tests/FO-0002/rating")).Text("scheme"));

        Assert.Equal(HttpStatusCode.OK, (await lab.Act("/api/v1/recomputations/1/resume")).Status);
        await lab.WaitFor(1, "finished");

        Assert.Equal(Key, (await lab.Read("/api/v1/tests/FO-0002/rating")).Text("scheme"));
        Assert.Equal(2L, await Sql.Scalar(api.Connections.Owner, "SELECT count(*) FROM lab.recomputation_step"));
        Assert.Equal(4L, await Sql.Scalar(api.Connections.Owner, "SELECT count(*) FROM lab.rating"));
    }

    /// <summary>A second edition that differs in one setting: computed beside the current one, compared, promoted by a reviewer alone.</summary>
    [Fact]
    public async Task Methods_CandidateEdition_IsComparedAndPromoted()
    {
        var second = new Methods("2", "Methods, edition 2", "Chest deflection of both dummies by class 60.") { ChestDeflectionClass = 60 };
        await using var api = await ApiHost.Start(
            postgres, services => services.Replace(ServiceDescriptor.Singleton(_ => ProgrammeRules.Carried with { Methods = [Methods.First, second] })));
        using var lab = await api.Machine(Role.Manager, Role.Engineer);
        using var reviewer = await api.Machine(Role.Reviewer);
        await lab.Upload(TestPackages.Zip(2));
        await lab.Upload(TestPackages.Zip(3));
        var before = await Deflection(lab, "FO-0002");

        var started = await lab.Act("/api/v1/methods/2/recompute", new { reason = "compare" });
        Assert.Equal(HttpStatusCode.OK, started.Status);
        Assert.Equal(HttpStatusCode.Conflict, (await reviewer.Act("/api/v1/methods/1/recompute", new { reason = "compare" })).Status);
        await lab.WaitFor(started.Json.GetProperty("id").GetInt64(), "finished");

        Assert.Equal(before, await Deflection(lab, "FO-0002"));
        var comparison = (await lab.Read("/api/v1/methods/2/comparison")).Json;
        var moved = comparison.GetProperty("measures").EnumerateArray().Where(measure => measure.GetProperty("moved").GetInt32() > 0).ToList();
        Assert.Contains("chest.deflection", moved.Select(measure => measure.GetProperty("code").GetString()));
        Assert.All(moved, measure => Assert.Contains(measure.GetProperty("code").GetString(), new[] { "chest.deflection", "chest.viscous", "risk.chest", "risk.joint" }));
        Assert.Equal(HttpStatusCode.Forbidden, (await lab.Act("/api/v1/methods/2/promote", new { confirm = "2", reason = "agreed" })).Status);
        Assert.Equal(HttpStatusCode.BadRequest, (await reviewer.Act("/api/v1/methods/2/promote", new { confirm = "1", reason = "agreed" })).Status);
        Assert.Equal(HttpStatusCode.OK, (await reviewer.Act("/api/v1/methods/2/promote", new { confirm = "2", reason = "agreed" })).Status);

        var after = await Deflection(lab, "FO-0002");
        Assert.Equal("2", after.Edition);
        Assert.NotEqual(before.Value, after.Value);
        await lab.Upload(TestPackages.Zip(1));
        Assert.Equal("2", (await Deflection(lab, "FO-0001")).Edition);
    }

    /// <summary>A run that came after the computation keeps the candidate from being promoted.</summary>
    [Fact]
    public async Task Promote_RunsChangedSince_IsRefused()
    {
        var second = new Methods("2", "Methods, edition 2", "Chest deflection by class 60.") { ChestDeflectionClass = 60 };
        await using var api = await ApiHost.Start(
            postgres, services => services.Replace(ServiceDescriptor.Singleton(_ => ProgrammeRules.Carried with { Methods = [Methods.First, second] })));
        using var lab = await api.Machine(Role.Reviewer, Role.Engineer);
        await lab.Upload(TestPackages.Zip(2));
        var started = await lab.Act("/api/v1/methods/2/recompute", new { reason = "compare" });
        await lab.WaitFor(started.Json.GetProperty("id").GetInt64(), "finished");
        await lab.Upload(TestPackages.Zip(3));

        var answer = await lab.Act("/api/v1/methods/2/promote", new { confirm = "2", reason = "agreed" });

        Assert.Equal(HttpStatusCode.Conflict, answer.Status);
        Assert.Contains("FO-0003", answer.Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    private static async Task<(double Value, string Edition)> Deflection(HttpClient lab, string test)
    {
        var measure = (await lab.Read($"/api/v1/tests/{test}/measures")).Json.EnumerateArray()
            .First(one => one.GetProperty("code").GetString() == "chest.deflection" && one.GetProperty("value").ValueKind == JsonValueKind.Number);
        return (measure.GetProperty("value").GetDouble(), measure.GetProperty("methodEdition").GetString()!);
    }
}
