using System.Net;
using Toepan.Api.Security;
using Toepan.Domain.Programme;
using Toepan.Support;

namespace Toepan.Api.Tests.Programme;

/// <summary>From plan to crash, step by step; impossible steps are refused with the reason.</summary>
public sealed class PreparationTests(PostgresFixture postgres)
{
    private const string Key = "velsey-lade-2032";

    [Fact]
    public async Task Plan_ToCrash_GoesThroughItsStates()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        await manager.AddVehicle(Key);
        var planned = await manager.Post("/api/v1/plan", new { test = "FO-0301", vehicle = Key, procedure = "offset-frontal-64", date = "2026-11-20" });
        var specimen = await manager.Post($"/api/v1/vehicles/{Key}/specimens", new { test = "FO-0301", receivedOn = "2026-11-02" });
        var received = await State(manager);
        var early = await manager.Put("/api/v1/plan/FO-0301", new { prepared = true, version = Version(planned) });
        await manager.Post("/api/v1/tests/FO-0301/preparation", new { items = Everything, version = 0 });
        var signed = await manager.Put("/api/v1/plan/FO-0301", new { prepared = true, version = Version(planned) });
        var made = await manager.Put("/api/v1/plan/FO-0301", new { ranOn = "2026-11-19", version = Version(signed) });
        var moved = await manager.Put("/api/v1/plan/FO-0301", new { date = "2026-12-01", version = Version(made) });

        Assert.Equal(("planned", HttpStatusCode.Created, "received"), (planned.Member("state"), specimen.Status, received));
        Assert.Equal(HttpStatusCode.Conflict, early.Status);
        Assert.Contains("Required and not recorded: Ride height, front left", early.Member("detail"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, signed.Status);
        Assert.Equal((HttpStatusCode.OK, "made on 2026-11-19"), (made.Status, moved.Member("detail")[moved.Member("detail").IndexOf("made", StringComparison.Ordinal)..][..18]));
        Assert.Equal(HttpStatusCode.Conflict, moved.Status);
    }

    [Fact]
    public async Task Record_SecondOfTwo_IsToldAndNothingIsOverwritten()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer, Role.Manager);
        await engineer.AddVehicle(Key);
        await engineer.Post("/api/v1/plan", new { test = "FO-0302", vehicle = Key, procedure = "offset-frontal-64", date = "2026-11-20" });

        var first = await engineer.Post("/api/v1/tests/FO-0302/preparation", new { items = Item("head-to-wheel", "412"), version = 0 });
        var second = await engineer.Post("/api/v1/tests/FO-0302/preparation", new { items = Item("head-to-wheel", "398"), version = 0 });
        var other = await engineer.Post("/api/v1/tests/FO-0302/preparation", new { items = Item("barrier-strength", "0.350"), version = 0 });

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict, HttpStatusCode.OK), (first.Status, second.Status, other.Status));
        var strength = other.Json.GetProperty("entries").EnumerateArray().Select(entry => entry.GetProperty("verdict"))
            .Single(verdict => verdict.GetProperty("item").GetProperty("item").GetString() == "barrier-strength");
        Assert.Equal(("outside", -0.008m), (strength.GetProperty("verdict").GetString(), strength.GetProperty("margin").GetDecimal()));
    }

    [Theory]
    [InlineData("head-to-wheel", "about 40 cm")]
    [InlineData("no-such-item", "1")]
    public async Task Record_WhatCannotBeRead_IsRefusedAsAWhole(string item, string text)
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer, Role.Manager);
        await engineer.AddVehicle(Key);
        await engineer.Post("/api/v1/plan", new { test = "FO-0303", vehicle = Key, procedure = "offset-frontal-64", date = "2026-11-20" });

        var answer = await engineer.Post("/api/v1/tests/FO-0303/preparation", new { items = new Dictionary<string, string> { ["barrier-batch"] = "B-7", [item] = text }, version = 0 });

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Equal(0, (await engineer.Read("/api/v1/tests/FO-0303/preparation")).Json.GetProperty("version").GetInt64());
    }

    private static Dictionary<string, string> Everything => ProcedureLibrary.Find("offset-frontal-64", 1)!.Preparation.ToDictionary(
        item => item.Item, item => item.Kind switch
        {
            PreparationKind.Number => (item.Lower ?? 100).ToString(System.Globalization.CultureInfo.InvariantCulture),
            PreparationKind.Text => "as on the sheet",
            _ => "2026-11-18T18:00 21.0\n2026-11-19T06:00 21.4",
        });

    private static Dictionary<string, string> Item(string key, string text) => new() { [key] = text };

    private static uint Version(Reply reply) => reply.Json.GetProperty("version").GetUInt32();

    private static async Task<string> State(HttpClient client) => (await client.Read("/api/v1/plan/FO-0301")).Member("state");
}
