using System.Net;
using Toepan.Api.Security;
using Toepan.Api.Tests.Programme;
using Toepan.Support;

namespace Toepan.Api.Tests.Sheets;

/// <summary>A sheet on its way to the public, each step by another role, and what each step refuses. FO-0002 is valid and rated.</summary>
public sealed class ReleaseTests(PostgresFixture postgres)
{
    private const string Reviews = "/api/v1/tests/FO-0002/reviews";
    private static readonly Dictionary<string, string> SmallSteps = new() { ["Releases:Step"] = "00:00:01" };

    [Fact]
    public async Task Sheet_EveryStepInTurn_IsPublicAtItsTimeAndNotBefore()
    {
        await using var api = await ApiHost.Start(postgres, settings: SmallSteps);
        using var desk = await Desk.Open(api);
        await desk.ApproveSheet();
        var at = DateTimeOffset.FromUnixTimeSeconds(DateTimeOffset.UtcNow.ToUnixTimeSeconds() + 4);

        var timed = await desk.Press.Post($"{desk.Address}/release", new { at });
        Assert.Equal(("embargo set", HttpStatusCode.OK), (timed.Member("stage"), timed.Status));
        Assert.Contains("the embargo ends on", (await desk.Press.Read("/api/v1/board")).Text, StringComparison.Ordinal);
        Assert.Equal("approved", (await desk.Press.Read("/api/v1/tests/FO-0002")).Member("state"));
        using var nobody = api.Anonymous();
        var page = timed.Member("address");
        var (before, first) = await Poll(nobody, page);

        Assert.True(before > 0);
        Assert.True(DateTimeOffset.UtcNow >= at);
        Assert.Contains("Velsey Porter", first, StringComparison.Ordinal);
        Assert.Contains("We agree with the test.", first, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await nobody.Read(page + "/v/1")).Status);
        Assert.Contains(page, (await nobody.Read("/released")).Text, StringComparison.Ordinal);
        var data = (await nobody.Read(page + ".json")).Text;
        Assert.Contains("\"@type\":\"Dataset\"", data, StringComparison.Ordinal);
        Assert.DoesNotContain("Rating\"", data, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Conflict, (await desk.Press.Put($"{desk.Address}/embargo", new { at = at.AddHours(1) })).Status);
        Assert.Equal("public", (await desk.Press.Read(desk.Address)).Member("stage"));
        Assert.Equal("released", (await desk.Press.Read("/api/v1/tests/FO-0002")).Member("state"));
    }

    [Fact]
    public async Task Steps_OutOfTurn_AreRefusedWithTheReason()
    {
        await using var api = await ApiHost.Start(postgres);
        using var desk = await Desk.Open(api);

        await Refused(desk.Reviewer.Post($"{desk.Address}/signature", new { }), "");
        await desk.ApproveRun();
        await Refused(desk.Press.Post($"{desk.Address}/notice", new { recipient = "Velsey" }), "No signature stands");
        await Refused(desk.Manager.Post($"{desk.Address}/approval", new { }), "No reviewer has signed");
        Assert.Equal(HttpStatusCode.Forbidden, (await desk.Press.Post($"{desk.Address}/signature", new { })).Status);
        Assert.Equal(HttpStatusCode.OK, (await desk.Reviewer.Post($"{desk.Address}/signature", new { })).Status);
        await Refused(desk.Manager.Post($"{desk.Address}/approval", new { }), "has not been told");
        Assert.Equal(HttpStatusCode.BadRequest, (await desk.Press.Post($"{desk.Address}/notice", new { recipient = " " })).Status);
        Assert.Equal(HttpStatusCode.OK, (await desk.Press.Post($"{desk.Address}/notice", new { recipient = "Velsey" })).Status);
        await Refused(desk.Manager.Post($"{desk.Address}/approval", new { earlyReason = "haste" }), "whatever the reason");
        await Refused(desk.Press.Post($"{desk.Address}/release", new { }), "No approval stands");
        Assert.Equal(HttpStatusCode.Forbidden, (await desk.Press.Post($"{desk.Address}/approval", new { })).Status);
        await Refused(desk.Manager.Post($"{desk.Address}/withdrawal", new { why = "x" }), "not public");
        Assert.Equal(HttpStatusCode.BadRequest, (await desk.Press.Post($"{desk.Address}/release", new { local = "2031-03-30T01:30", zone = "Europe/London" })).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await desk.Press.Read("/api/v1/releases/nothing-such")).Status);
    }

    [Fact]
    public async Task Embargo_DataChangedBehindIt_IsNeverSeenAndTheSignatureFalls()
    {
        await using var api = await ApiHost.Start(postgres, settings: SmallSteps);
        using var desk = await Desk.Open(api);
        await desk.ApproveSheet();
        var at = DateTimeOffset.FromUnixTimeSeconds(DateTimeOffset.UtcNow.ToUnixTimeSeconds() + 3600);
        var page = (await desk.Press.Post($"{desk.Address}/release", new { at })).Member("address");

        await desk.Manager.Post("/api/v1/vehicles/" + desk.Vehicle + "/twins", new { vehicle = "velsey-twin-2031", make = "Velsey", model = "Twin", evidence = "Drawing 7" });

        var standing = await desk.Press.Read(desk.Address);
        Assert.Equal("to be signed", standing.Member("stage"));
        Assert.Equal(0, standing.Json.GetProperty("versions").GetArrayLength());
        using var nobody = api.Anonymous();
        Assert.Equal((await nobody.Read("/sheets/unknown")).Text, (await nobody.Read(page)).Text);
    }

    [Fact]
    public async Task Withdrawal_OfAPublicSheet_SaysSoAndKeepsTheVersion()
    {
        await using var api = await ApiHost.Start(postgres);
        using var desk = await Desk.Open(api);
        await desk.ApproveSheet();
        var page = (await desk.Press.Post($"{desk.Address}/release", new { })).Member("address");
        using var nobody = api.Anonymous();
        using var first = await nobody.GetAsync(page, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        Assert.False(first.Headers.Contains("Set-Cookie"));
        Assert.InRange(first.Headers.CacheControl!.MaxAge!.Value.TotalSeconds, 0, 60);
        using var again = new HttpRequestMessage(HttpMethod.Get, page);
        again.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        Assert.Equal(HttpStatusCode.NotModified, (await nobody.SendAsync(again, TestContext.Current.CancellationToken)).StatusCode);

        Assert.Equal(HttpStatusCode.Forbidden, (await desk.Press.Post($"{desk.Address}/withdrawal", new { why = "A clamp was loose." })).Status);
        Assert.Equal(HttpStatusCode.OK, (await desk.Manager.Post($"{desk.Address}/withdrawal", new { why = "A clamp was loose." })).Status);

        Assert.Contains("withdrawn on", (await nobody.Read(page)).Text, StringComparison.Ordinal);
        var kept = (await nobody.Read(page + "/v/1")).Text;
        Assert.Contains("A clamp was loose.", kept, StringComparison.Ordinal);
        Assert.Contains("protection", kept, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await nobody.Read(page + ".pdf")).Status);
    }

    private static async Task<(int Before, string First)> Poll(HttpClient nobody, string page)
    {
        var unknown = (await nobody.Read("/sheets/unknown")).Text;
        for (var before = 0; before < 2_000; before++)
        {
            var answer = await nobody.Read(page);
            if (answer.Status == HttpStatusCode.OK)
            {
                return (before, answer.Text);
            }

            Assert.Equal((HttpStatusCode.NotFound, unknown), (answer.Status, answer.Text));
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        throw new InvalidOperationException("The sheet never became public.");
    }

    private static async Task Refused(Task<Reply> asked, string says)
    {
        var answer = await asked;
        Assert.Equal(HttpStatusCode.Conflict, answer.Status);
        Assert.Contains(says, answer.Member("detail"), StringComparison.Ordinal);
    }

    /// <summary>The people of one release.</summary>
    private sealed record Desk(HttpClient Reviewer, HttpClient Manager, HttpClient Press, string Vehicle) : IDisposable
    {
        public string Address => $"/api/v1/releases/{Vehicle}";

        public static async Task<Desk> Open(ApiHost api)
        {
            using var engineer = await api.Machine(Role.Engineer);
            await engineer.Bring(2);
            var vehicle = (await engineer.Read("/api/v1/tests/FO-0002")).Json.GetProperty("vehicle");
            return new(await api.Machine(Role.Reviewer), await api.Machine(Role.Manager), await api.Machine(Role.Communications), vehicle.ToString());
        }

        public async Task ApproveRun()
        {
            var rating = (await Reviewer.Read(Reviews)).Json.GetProperty("ratingId").GetInt64();
            foreach (var part in (string[])["conduct", "data", "structure", "film"])
            {
                Assert.Equal(HttpStatusCode.OK, (await Reviewer.Post(Reviews, new { kind = "sign", part, ratingId = rating })).Status);
            }

            Assert.Equal(HttpStatusCode.OK, (await Manager.Post(Reviews, new { kind = "approve", ratingId = rating })).Status);
        }

        public async Task ApproveSheet()
        {
            await ApproveRun();
            Assert.Equal(HttpStatusCode.OK, (await Reviewer.Post($"{Address}/signature", new { })).Status);
            Assert.Equal(HttpStatusCode.OK, (await Press.Post($"{Address}/notice", new { recipient = "Velsey" })).Status);
            Assert.Equal(HttpStatusCode.OK, (await Press.Post($"{Address}/reply", new { text = "We agree with the test.", mayPrint = true })).Status);
            Assert.Equal(HttpStatusCode.OK, (await Manager.Post($"{Address}/approval", new { })).Status);
        }

        public void Dispose()
        {
            Reviewer.Dispose();
            Manager.Dispose();
            Press.Dispose();
        }
    }
}
