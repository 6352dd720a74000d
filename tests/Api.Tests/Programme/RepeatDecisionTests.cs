using System.Net;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Programme;

/// <summary>Decisions before acts: FO-0002 of the demo programme is valid, FO-0019 lacks its overlap and is not.</summary>
public sealed class RepeatDecisionTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Decide_ValidRunBecauseOfItsResult_IsRefusedWithTheReason()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        await manager.Bring(2);

        var answer = await manager.Post("/api/v1/tests/FO-0002/repeat-decisions", Decision("result doubted"));

        Assert.Equal(HttpStatusCode.Conflict, answer.Status);
        Assert.Contains("never replaces a valid run because of its result", answer.Member("detail"), StringComparison.Ordinal);
        Assert.Equal("[]", (await manager.Read("/api/v1/tests/FO-0002/repeat-decisions")).Text);
    }

    [Fact]
    public async Task Decide_MeasuresOpenedByOthers_RecordsWhoHadSeenThem()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        using var analyst = await api.Machine(Role.Analyst);
        await manager.Bring(19);

        await manager.Read("/api/v1/tests/FO-0019");
        var unseen = await manager.Post("/api/v1/tests/FO-0019/repeat-decisions", Decision("conduct outside"));
        await analyst.Read("/api/v1/tests/FO-0019/measures");
        await manager.Read("/api/v1/tests/FO-0019/rating");
        var seen = await manager.Post("/api/v1/tests/FO-0019/repeat-decisions", Decision("conduct outside"));

        Assert.Equal(("False", 0), (unseen.Member("measuresSeen"), unseen.Json.GetProperty("seenBy").GetArrayLength()));
        Assert.Equal(("True", 2), (seen.Member("measuresSeen"), seen.Json.GetProperty("seenBy").GetArrayLength()));
    }

    [Fact]
    public async Task Plan_Repeat_NeedsTheDecisionFirst()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        await manager.Bring(19);
        var run = (await manager.Read("/api/v1/tests/FO-0019")).Json;
        var plan = new { test = "FO-0119", vehicle = run.GetProperty("vehicle").GetString(), procedure = "offset-frontal-64", date = "2031-09-01", repeatOf = "FO-0019" };

        var early = await manager.Post("/api/v1/plan", plan);
        await manager.Post("/api/v1/tests/FO-0019/repeat-decisions", Decision("conduct outside"));
        var state = (await manager.Read("/api/v1/tests/FO-0019")).Member("state");
        var planned = await manager.Post("/api/v1/plan", plan);
        var twice = await manager.Post("/api/v1/plan", new { test = "FO-0120", plan.vehicle, plan.procedure, plan.date, plan.repeatOf });
        var late = await manager.Post("/api/v1/tests/FO-0019/repeat-decisions", Decision("conduct outside"));

        Assert.Equal((HttpStatusCode.Conflict, HttpStatusCode.Created, HttpStatusCode.Conflict), (early.Status, planned.Status, twice.Status));
        Assert.Contains("has not been decided", early.Member("detail"), StringComparison.Ordinal);
        Assert.Equal("repeat due", state);
        Assert.Equal(HttpStatusCode.Conflict, late.Status);
        Assert.StartsWith("FO-0119 repeats it already", late.Member("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Decide_ByAnEngineer_IsForbidden()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);

        Assert.Equal(HttpStatusCode.Forbidden, (await engineer.Post("/api/v1/tests/FO-0019/repeat-decisions", Decision("conduct outside"))).Status);
    }

    private static object Decision(string trigger) =>
        new { trigger, choice = "repeat", evidence = "Overlap was not measured", options = "Leave it; measure from film", measuresSeen = false };
}
