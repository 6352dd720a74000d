using System.Net;
using Toepan.Api.Security;
using Toepan.Api.Tests.Programme;
using Toepan.Support;

namespace Toepan.Api.Tests.Ratings;

/// <summary>Reviews of demo runs: FO-0002 is valid, FO-0005 not (overlap), FO-0019 lacks its overlap.</summary>
public sealed class ReviewTests(PostgresFixture postgres)
{
    private const string Reviews = "/api/v1/tests/FO-0002/reviews";
    private static readonly string[] Parts = ["conduct", "data", "structure", "film"];

    [Fact]
    public async Task Run_SignedInEveryPartByOthers_IsApprovedByAManager()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        using var reviewer = await api.Machine(Role.Reviewer);
        using var manager = await api.Machine(Role.Manager);
        await engineer.Bring(2);
        var rating = await Rating(reviewer);

        Assert.Equal("rated", await State(manager));
        foreach (var part in Parts)
        {
            Assert.Equal(HttpStatusCode.Conflict, (await manager.Post(Reviews, new { kind = "approve", ratingId = rating })).Status);
            Assert.Equal(HttpStatusCode.OK, (await reviewer.Post(Reviews, new { kind = "sign", part, ratingId = rating })).Status);
            Assert.Equal("in review", await State(manager));
        }

        Assert.Equal(HttpStatusCode.Forbidden, (await reviewer.Post(Reviews, new { kind = "approve", ratingId = rating })).Status);
        var approved = await manager.Post(Reviews, new { kind = "approve", ratingId = rating });

        Assert.Equal("True", approved.Member("approved"));
        Assert.Equal("approved", await State(manager));
        Assert.Equal(HttpStatusCode.Conflict, (await manager.Post(Reviews, new { kind = "approve", ratingId = rating })).Status);
    }

    [Fact]
    public async Task Sign_OwnUpload_IsRefused()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        await manager.Bring(2);

        var answer = await manager.Post(Reviews, new { kind = "sign", part = "film", ratingId = await Rating(manager) });

        Assert.Equal(HttpStatusCode.Conflict, answer.Status);
        Assert.Contains("You uploaded its package", answer.Member("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Flag_AfterApproval_VoidsEverySignature()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        using var reviewer = await api.Machine(Role.Reviewer);
        using var manager = await api.Machine(Role.Manager);
        await engineer.Bring(2);
        var rating = await Rating(reviewer);
        await SignAll(reviewer, rating);
        await manager.Post(Reviews, new { kind = "approve", ratingId = rating });

        var channels = (await engineer.Read("/api/v1/tests/FO-0002/channels")).Json;
        var flag = await manager.Post("/api/v1/tests/FO-0002/flags", new { channel = channels[0].GetProperty("code").GetString(), kind = "scale", factor = 1.0001, reason = "calibration read anew" });
        Assert.Equal(HttpStatusCode.Created, flag.Status);

        var review = await reviewer.Read(Reviews);
        Assert.Equal("rated", await State(manager));
        Assert.Equal(("False", 5), (review.Member("approved"), review.Json.GetProperty("earlier").GetArrayLength()));
        var old = await reviewer.Post(Reviews, new { kind = "sign", part = "film", ratingId = rating });
        Assert.Equal(HttpStatusCode.Conflict, old.Status);
        Assert.Contains("new rating", old.Member("detail"), StringComparison.Ordinal);
        // Whoever decided about a channel does not sign the data; the other parts they may.
        var now = await Rating(manager);
        Assert.Equal(HttpStatusCode.Conflict, (await manager.Post(Reviews, new { kind = "sign", part = "data", ratingId = now })).Status);
        Assert.Equal(HttpStatusCode.OK, (await manager.Post(Reviews, new { kind = "sign", part = "film", ratingId = now })).Status);
    }

    [Fact]
    public async Task Withdrawal_OfASignature_TakesTheApprovalBack()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        using var reviewer = await api.Machine(Role.Reviewer);
        using var other = await api.Machine(Role.Reviewer);
        using var manager = await api.Machine(Role.Manager);
        await engineer.Bring(2);
        var rating = await Rating(reviewer);
        await SignAll(reviewer, rating);
        var act = (await manager.Post(Reviews, new { kind = "approve", ratingId = rating })).Json.GetProperty("parts")[1].GetProperty("act").GetProperty("id").GetInt64();

        Assert.Equal(HttpStatusCode.BadRequest, (await reviewer.Post($"{Reviews}/{act}/withdrawal", new { })).Status);
        Assert.Equal(HttpStatusCode.Conflict, (await other.Post($"{Reviews}/{act}/withdrawal", new { reason = "not mine" })).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await reviewer.Post($"{Reviews}/999999/withdrawal", new { reason = "which" })).Status);
        var withdrawn = await reviewer.Post($"{Reviews}/{act}/withdrawal", new { reason = "looked at the wrong channel" });

        Assert.Equal("False", withdrawn.Member("approved"));
        Assert.Contains("Data is not signed", withdrawn.Member("suspended"), StringComparison.Ordinal);
        Assert.Equal("in review", await State(manager));
        // Signed again, the approval is given again: it was given to another set of signatures.
        var signed = await reviewer.Post(Reviews, new { kind = "sign", part = "data", ratingId = rating });
        Assert.Equal("False", signed.Member("approved"));
        Assert.Equal("True", (await manager.Post(Reviews, new { kind = "approve", ratingId = rating })).Member("approved"));
    }

    [Fact]
    public async Task SendBack_Part_BlocksUntilItIsWithdrawn()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        using var reviewer = await api.Machine(Role.Reviewer);
        await engineer.Bring(2);
        var rating = await Rating(reviewer);

        Assert.Equal(HttpStatusCode.BadRequest, (await reviewer.Post(Reviews, new { kind = "sendBack", part = "film", ratingId = rating })).Status);
        Assert.Equal(HttpStatusCode.OK, (await reviewer.Post(Reviews, new { kind = "sendBack", part = "film", note = "camera two is missing", ratingId = rating })).Status);
        var refused = await reviewer.Post(Reviews, new { kind = "sign", part = "film", ratingId = rating });

        Assert.Equal(HttpStatusCode.Conflict, refused.Status);
        Assert.Contains("sent it back", refused.Member("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Accept_NotValidRun_OnlyWhereTheRulesBearIt()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        using var reviewer = await api.Machine(Role.Reviewer);
        await engineer.Bring(5);
        const string Five = "/api/v1/tests/FO-0005/reviews";
        var rating = (await reviewer.Read(Five)).Json.GetProperty("ratingId").GetInt64();

        Assert.Equal(HttpStatusCode.Conflict, (await reviewer.Post(Five, new { kind = "sign", part = "conduct", ratingId = rating })).Status);
        var accepted = await reviewer.Post(Five, new { kind = "acceptRun", note = "the overlap was 0.2 % over and the pulse agrees", ratingId = rating });

        Assert.Equal(HttpStatusCode.OK, accepted.Status);
        var run = await reviewer.Read("/api/v1/tests/FO-0005");
        Assert.Equal(("rated", "False", "True"), (run.Member("state"), run.Member("valid"), run.Member("accepted")));
        Assert.Contains("Review the run", (await reviewer.Read("/api/v1/board")).Text, StringComparison.Ordinal);
        var vehicle = (await reviewer.Read($"/api/v1/vehicles/{run.Member("vehicle")}")).Json;
        Assert.Equal("FO-0005", vehicle.GetProperty("ratedBy").GetString());
        Assert.Equal(HttpStatusCode.OK, (await reviewer.Post(Five, new { kind = "sign", part = "conduct", ratingId = rating })).Status);
    }

    [Fact]
    public async Task Sign_PackageBroughtBackByAnother_IsRefusedToBothWhoBroughtIt()
    {
        await using var api = await ApiHost.Start(postgres);
        using var first = await api.Machine(Role.Engineer, Role.Reviewer);
        using var second = await api.Machine(Role.Engineer, Role.Reviewer);
        using var third = await api.Machine(Role.Reviewer);
        await first.Bring(2);
        await first.Replace(2, seed: 2, "Wrong disk");
        await second.Replace(2, seed: 1, "It was the right one");
        var rating = await Rating(third);

        foreach (var own in new[] { first, second })
        {
            Assert.Equal(HttpStatusCode.Conflict, (await own.Post(Reviews, new { kind = "sign", part = "film", ratingId = rating })).Status);
        }

        Assert.Equal(HttpStatusCode.OK, (await third.Post(Reviews, new { kind = "sign", part = "film", ratingId = rating })).Status);
    }

    [Theory]
    [InlineData("""{"kind":"sign","ratingId":1}""")]
    [InlineData("""{"kind":"approve","part":"film","ratingId":1}""")]
    [InlineData("""{"kind":"acceptConcern","note":"x","ratingId":1}""")]
    [InlineData("""{"part":"film"}""")]
    [InlineData("""{"kind":"applaud","ratingId":1}""")]
    public async Task Act_Malformed_IsABadRequest(string body)
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);

        var answer = await manager.PostFile(Reviews, System.Text.Encoding.UTF8.GetBytes(body), "application/json");

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
    }

    private static async Task SignAll(HttpClient reviewer, long rating)
    {
        foreach (var part in Parts)
        {
            Assert.Equal(HttpStatusCode.OK, (await reviewer.Post(Reviews, new { kind = "sign", part, ratingId = rating })).Status);
        }
    }

    private static async Task<long> Rating(HttpClient client) => (await client.Read(Reviews)).Json.GetProperty("ratingId").GetInt64();

    private static async Task<string> State(HttpClient client) => (await client.Read("/api/v1/tests/FO-0002")).Member("state");
}
