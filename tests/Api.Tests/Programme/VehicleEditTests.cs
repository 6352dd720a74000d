using System.Net;
using Npgsql;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Programme;

/// <summary>Two people at one vehicle or specimen; what the history keeps of a change.</summary>
public sealed class VehicleEditTests(PostgresFixture postgres)
{
    private const string Key = "velsey-lade-2032";

    [Fact]
    public async Task Change_SecondOfTwoEditors_IsToldAndNothingIsOverwritten()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        var version = Version(await manager.AddVehicle(Key));

        var first = await manager.Put($"/api/v1/vehicles/{Key}", new { make = "Velsey", model = "Lade L", @class = "delivery-van", version });
        var second = await manager.Put($"/api/v1/vehicles/{Key}", new { make = "Velsey", model = "Lade XL", @class = "delivery-van", version });
        var stored = await manager.Read($"/api/v1/vehicles/{Key}");

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict), (first.Status, second.Status));
        Assert.Contains("Somebody changed vehicle", second.Member("detail"), StringComparison.Ordinal);
        Assert.Equal(Version(first).ToString(System.Globalization.CultureInfo.InvariantCulture), second.Member("version"));
        Assert.Equal("Lade L", stored.Json.GetProperty("vehicle").GetProperty("model").GetString());
    }

    [Fact]
    public async Task Change_Kept_WritesBeforeAndAfterIntoTheHistory()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        var version = Version(await manager.AddVehicle(Key));
        await manager.Put($"/api/v1/vehicles/{Key}", new { make = "Velsey", model = "Lade", @class = "delivery-van", kerbMassKg = 1725.5, version });

        await using var source = NpgsqlDataSource.Create(api.Connections.Owner);
        await using var command = source.CreateCommand(
            "SELECT before->>'kerbMassKg' || ' ' || (after->>'kerbMassKg') FROM lab.audit WHERE action = 'change vehicle' AND entity = 'vehicle/velsey-lade-2032'");
        Assert.Equal("1700 1725.5", await command.ExecuteScalarAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Change_WrongWayRound_IsRefusedWithTheReason()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        var version = Version(await manager.AddVehicle(Key));

        var answer = await manager.Put($"/api/v1/vehicles/{Key}", new { @class = "delivery-van", builtFrom = "2032-01-01", builtTo = "2031-01-01", version });

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Contains("build dates", answer.Member("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Specimen_Serial_IsKeptMaskedOnlyAndTheSecondEditorIsTold()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        using var engineer = await api.Machine(Role.Engineer);
        await manager.AddVehicle(Key);

        var added = await engineer.Post($"/api/v1/vehicles/{Key}/specimens", new { serial = "VL32DEMO000047113", odometerKm = 12, purchasedFrom = "Northmoor dealer" });
        var version = added.Json.GetProperty("version").GetUInt32();
        var path = $"/api/v1/specimens/{added.Member("id")}";
        var first = await engineer.Put(path, new { serial = added.Member("serial"), receivedOn = "2026-11-02", version });
        var second = await engineer.Put(path, new { serial = "X", version });

        Assert.Equal("•••••••••••••7113", added.Member("serial"));
        Assert.Equal("•••••••••••••7113", first.Member("serial"));
        Assert.Equal(HttpStatusCode.Conflict, second.Status);
        await using var source = NpgsqlDataSource.Create(api.Connections.Owner);
        await using var command = source.CreateCommand("SELECT count(*) FROM lab.audit WHERE concat(before, after) LIKE '%DEMO0000%'");
        Assert.Equal(0L, await command.ExecuteScalarAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Vehicles_ByAnAnalyst_AreReadAndNotChanged()
    {
        await using var api = await ApiHost.Start(postgres);
        using var analyst = await api.Machine(Role.Analyst);

        Assert.Equal(HttpStatusCode.Forbidden, (await analyst.AddVehicle(Key)).Status);
        Assert.Equal(HttpStatusCode.OK, (await analyst.Read("/api/v1/vehicles")).Status);
        Assert.Equal(HttpStatusCode.OK, (await analyst.Read("/api/v1/vehicles/export")).Status);
    }

    [Fact]
    public async Task CarryOver_Decided_ShowsTheRatingAndWhy()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        await manager.Bring(2);
        await manager.AddVehicle(Key);
        var tested = (await manager.Read("/api/v1/tests/FO-0002")).Json;

        var decided = await manager.Post($"/api/v1/vehicles/{Key}/carry-over", new
        {
            from = tested.GetProperty("vehicle").GetString(), reason = "New rear lamps only", evidence = "Change notice 31-07",
        });
        var shared = (await manager.Read($"/api/v1/vehicles/{Key}")).Json.GetProperty("shared");
        var again = await manager.Post($"/api/v1/vehicles/{Key}/carry-over", new { from = tested.GetProperty("vehicle").GetString(), reason = "x", evidence = "y" });

        Assert.Equal(HttpStatusCode.Created, decided.Status);
        Assert.Equal(tested.GetProperty("overall").GetString(), shared.GetProperty("overall").GetString());
        Assert.Equal(("carried over", "Change notice 31-07"), (shared.GetProperty("because").GetString(), shared.GetProperty("evidence").GetString()));
        Assert.Equal(HttpStatusCode.Conflict, again.Status);
    }

    private static uint Version(Reply reply) => reply.Json.GetProperty("vehicle").GetProperty("version").GetUInt32();
}
