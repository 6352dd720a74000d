using System.Net;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Ratings.Reviews;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Programme.Equipment;
using Toepan.Support;

namespace Toepan.Api.Tests.Programme;

/// <summary>Equipment and dummy checks about FO-0002 of the demo programme.</summary>
public sealed class EquipmentTests(PostgresFixture postgres)
{
    private const string Run = "/api/v1/tests/FO-0002";
    private const string Reviews = $"{Run}/reviews";

    [Fact]
    public async Task Dummy_FailedCheckAfterApproval_SuspendsItUntilTheConcernIsAccepted()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        using var reviewer = await api.Machine(Role.Reviewer);
        using var manager = await api.Machine(Role.Manager);
        await engineer.Bring(2);
        var day = DateOnly.Parse((await engineer.Read(Run)).Member("date"), System.Globalization.CultureInfo.InvariantCulture);
        var dummy = await Add(engineer, "dummy", "D-17");
        await engineer.Post($"/api/v1/equipment/{dummy}/calibrations", new { on = day.AddDays(-30), dueOn = day, certificate = "C-1" });
        Assert.Equal(HttpStatusCode.OK, (await engineer.Post($"{Run}/equipment", new { equipment = dummy, position = 1 })).Status);
        await Approve(reviewer, manager);
        Assert.Equal("approved", (await manager.Read(Run)).Member("state"));
        var released = DateTimeOffset.UtcNow;
        Assert.Empty(await Corrections(api, released));

        var failed = await engineer.Post($"/api/v1/equipment/{dummy}/checks", new { part = "chest", passed = false, on = day.AddDays(2), note = "rib three reads high" });

        Assert.Equal(HttpStatusCode.OK, failed.Status);
        Assert.Equal("in review", (await manager.Read(Run)).Member("state"));
        Assert.Contains("chest of dummy D-17", (await manager.Read("/api/v1/tests")).Json[0].GetProperty("concerns")[0].GetString(), StringComparison.Ordinal);
        Assert.Contains("chest of dummy D-17", Assert.Single(await Corrections(api, released)).Reason, StringComparison.Ordinal);
        Assert.Empty(await Corrections(api, DateTimeOffset.UtcNow));
        var review = await manager.Read(Reviews);
        Assert.Contains("chest", review.Member("suspended"), StringComparison.Ordinal);
        var inDoubt = (await engineer.Read($"{Run}/measures")).Json.EnumerateArray().Where(measure => measure.GetProperty("inDoubt").ValueKind == JsonValueKind.String)
            .Select(measure => measure.GetProperty("code").GetString()).ToList();
        Assert.Equal(["chest.a3ms", "chest.deflection", "chest.viscous", "risk.chest"], inDoubt.Order(StringComparer.Ordinal));

        var concern = review.Json.GetProperty("concerns")[0].GetProperty("key").GetString();
        var rating = review.Json.GetProperty("ratingId").GetInt64();
        Assert.Equal(HttpStatusCode.BadRequest, (await reviewer.Post(Reviews, new { kind = "acceptConcern", concern, ratingId = rating })).Status);
        await reviewer.Post(Reviews, new { kind = "acceptConcern", concern, note = "the rib was struck when the dummy was lifted out", ratingId = rating });
        Assert.Equal("approved", (await manager.Read(Run)).Member("state"));
        Assert.Empty(await Corrections(api, released));
    }

    [Fact]
    public async Task Dummy_PassedOnTheDayOfTheRun_SpeaksForTheRun()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        await engineer.Bring(2);
        var day = DateOnly.Parse((await engineer.Read(Run)).Member("date"), System.Globalization.CultureInfo.InvariantCulture);
        var dummy = await Add(engineer, "dummy", "D-18");
        await engineer.Post($"{Run}/equipment", new { equipment = dummy, position = 1 });
        await engineer.Post($"/api/v1/equipment/{dummy}/checks", new { part = "neck", passed = true, on = day });

        await engineer.Post($"/api/v1/equipment/{dummy}/checks", new { part = "neck", passed = false, on = day.AddDays(9), note = "cable slack" });

        Assert.Equal(0, (await engineer.Read($"{Run}/equipment")).Json.GetProperty("inDoubt").GetArrayLength());
    }

    [Fact]
    public async Task Gate_OutOfDateOnTheDay_BlocksApprovalUntilAcceptedOrCalibrated()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        using var reviewer = await api.Machine(Role.Reviewer);
        using var manager = await api.Machine(Role.Manager);
        await engineer.Bring(2);
        var day = DateOnly.Parse((await engineer.Read(Run)).Member("date"), System.Globalization.CultureInfo.InvariantCulture);
        var gate = await Add(engineer, "speedGate", "G-1");
        await engineer.Post($"/api/v1/equipment/{gate}/calibrations", new { on = day.AddDays(-400), dueOn = day.AddDays(-1), certificate = "C-2" });
        await engineer.Post($"{Run}/equipment", new { equipment = gate });

        var refused = await Approve(reviewer, manager);
        Assert.Equal(HttpStatusCode.Conflict, refused.Status);
        Assert.Contains("G-1", refused.Member("detail"), StringComparison.Ordinal);

        await engineer.Post($"/api/v1/equipment/{gate}/calibrations", new { on = day.AddDays(-10), dueOn = day.AddDays(300), certificate = "C-3" });
        Assert.Equal(HttpStatusCode.OK, (await Approve(reviewer, manager)).Status);
    }

    [Fact]
    public async Task Transducer_NamedInAChannelHeader_IsFoundWithoutBeingAssigned()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        await engineer.Bring(2);
        await Sql(api, "UPDATE lab.channel SET header = header || '[{\"key\":\"Transducer id\",\"value\":\"T-900\",\"line\":9}]'::jsonb WHERE ordinal = 0");
        var code = (await engineer.Read($"{Run}/channels")).Json[0].GetProperty("code").GetString();
        await Add(engineer, "transducer", "T-900");

        var used = (await engineer.Read($"{Run}/equipment")).Json.GetProperty("equipment")[0];

        Assert.Equal("T-900", used.GetProperty("serial").GetString());
        Assert.Equal(code, used.GetProperty("channels")[0].GetString());
        Assert.Contains("no calibration on record", used.GetProperty("fault").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Change_SecondEditor_IsTold()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        using var analyst = await api.Machine(Role.Analyst);
        var arm = await Add(engineer, "measuringArm", "A-1");
        var version = (await engineer.Read($"/api/v1/equipment/{arm}")).Json.GetProperty("item").GetProperty("version").GetUInt32();
        var change = new { kind = "measuringArm", serial = "A-1", title = "Arm in hall 2", version };

        Assert.Equal(HttpStatusCode.OK, (await engineer.Put($"/api/v1/equipment/{arm}", change)).Status);
        Assert.Equal(HttpStatusCode.Conflict, (await engineer.Put($"/api/v1/equipment/{arm}", change)).Status);
        Assert.Equal(HttpStatusCode.Forbidden, (await analyst.Put($"/api/v1/equipment/{arm}", change)).Status);
        Assert.Equal(HttpStatusCode.Conflict, (await engineer.Post("/api/v1/equipment", new { kind = "measuringArm", serial = "A-1", title = "Another" })).Status);
        Assert.Equal(HttpStatusCode.BadRequest, (await engineer.Post($"/api/v1/equipment/{arm}/checks", new { part = "head", passed = true, on = "2031-01-01" })).Status);
        Assert.Equal(HttpStatusCode.BadRequest, (await engineer.Post($"/api/v1/equipment/{arm}/calibrations", new { on = "2031-02-01", dueOn = "2031-01-01", certificate = "C" })).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await engineer.Post("/api/v1/equipment/9999/calibrations", new { on = "2031-01-01", dueOn = "2032-01-01", certificate = "C" })).Status);
    }

    // What would be due of the run, had it been made public at that time.
    private static async Task<IReadOnlyList<CorrectionDue>> Corrections(ApiHost api, DateTimeOffset publicSince)
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var context = await api.Services.GetRequiredService<IDbContextFactory<ProgrammeDb>>().CreateDbContextAsync(cancellation);
        return await CorrectionIndex.Load(context, new Dictionary<string, DateTimeOffset> { ["FO-0002"] = publicSince }, cancellation);
    }

    private static async Task<Reply> Approve(HttpClient reviewer, HttpClient manager)
    {
        var rating = (await reviewer.Read(Reviews)).Json.GetProperty("ratingId").GetInt64();
        foreach (var part in new[] { "conduct", "data", "structure", "film" })
        {
            await reviewer.Post(Reviews, new { kind = "sign", part, ratingId = rating });
        }

        return await manager.Post(Reviews, new { kind = "approve", ratingId = rating });
    }

    private static async Task<long> Add(HttpClient client, string kind, string serial) =>
        (await client.Post("/api/v1/equipment", new { kind, serial, title = "Of hall 2" })).Json.GetProperty("item").GetProperty("id").GetInt64();

    // As the owner: a demo package carries no transducer serials.
    private static async Task Sql(ApiHost api, string statement)
    {
        await using var source = Npgsql.NpgsqlDataSource.Create(api.Connections.Owner);
        await using var command = source.CreateCommand(statement);
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }
}
