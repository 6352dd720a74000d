using System.Net;
using System.Text;
using MiniExcelLibs;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Programme;

/// <summary>The vehicle list, out and in. Neutralised formulas: common practice, no source.</summary>
public sealed class VehicleListTests(PostgresFixture postgres)
{
    private const string Csv = "text/csv";
    private const string Sheet = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private const string Two = "vehicle,make,model,class,kerbMassKg\nvelsey-lade-2032,Velsey,Lade,delivery-van,1700\nquillon-ode-2031,Quillon,\"Ode, long\",compact-electric,1500.5\n";

    [Fact]
    public async Task Import_DryRun_SaysEveryChangeAndKeepsNothing()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        await manager.AddVehicle("velsey-lade-2032");

        var tried = await Import(manager, Two.Replace("1700", "1710", StringComparison.Ordinal), "?dryRun=true");
        var rows = tried.Json.GetProperty("rows");

        Assert.Equal(("changed", "added"), (rows[0].GetProperty("act").GetString(), rows[1].GetProperty("act").GetString()));
        var change = Assert.Single(rows[0].GetProperty("changes").EnumerateArray());
        Assert.Equal(("kerbMassKg", "1700", "1710"), (change.GetProperty("column").GetString(), change.GetProperty("before").GetString(), change.GetProperty("after").GetString()));
        Assert.Equal(1, (await manager.Read("/api/v1/vehicles")).Json.GetArrayLength());
    }

    [Fact]
    public async Task Import_OneBadRow_TakesNone()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);

        var answer = await Import(manager, Two + "x-1,,,no-such-class,\n");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Equal(4, Assert.Single(answer.Json.GetProperty("problems").EnumerateArray()).GetProperty("line").GetInt32());
        Assert.Equal("[]", (await manager.Read("/api/v1/vehicles")).Text);
    }

    [Fact]
    public async Task Import_ColumnLeftOut_LeavesItAndEmptyCellClears()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        await manager.AddVehicle("velsey-lade-2032");

        await Import(manager, "vehicle,kerbMassKg\nvelsey-lade-2032,\n");
        var vehicle = (await manager.Read("/api/v1/vehicles")).Json[0];

        Assert.Equal(("Lade", 25.5m, System.Text.Json.JsonValueKind.Null), (vehicle.GetProperty("model").GetString(), vehicle.GetProperty("salesSharePercent").GetDecimal(), vehicle.GetProperty("kerbMassKg").ValueKind));
    }

    [Fact]
    public async Task Import_AfterAnotherChange_IsRefusedByItsDigest()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        var digest = (await Import(manager, Two, "?dryRun=true")).Member("digest");
        await manager.AddVehicle("velsey-lade-2032");

        var stale = await Import(manager, Two, $"?digest={digest}");
        var fresh = await Import(manager, Two, $"?digest={(await Import(manager, Two, "?dryRun=true")).Member("digest")}");

        Assert.Equal((HttpStatusCode.Conflict, HttpStatusCode.OK), (stale.Status, fresh.Status));
        Assert.Equal("True", fresh.Member("applied"));
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+cmd")]
    [InlineData("-2")]
    [InlineData("@SUM(A1)")]
    [InlineData("'=quoted")]
    public async Task Export_FormulaLikeText_IsNeutralisedAndComesBack(string model)
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        await manager.AddVehicle("velsey-lade-2032", new { vehicle = "velsey-lade-2032", model, @class = "delivery-van" });

        var csv = await manager.GetStringAsync("/api/v1/vehicles/export", TestContext.Current.CancellationToken);
        var sheet = await manager.GetByteArrayAsync("/api/v1/vehicles/export?format=xlsx", TestContext.Current.CancellationToken);
        var cells = new MemoryStream(sheet).Query(useHeaderRow: true).Cast<IDictionary<string, object>>().Single();

        Assert.Contains($",'{model},", csv, StringComparison.Ordinal);
        Assert.Equal($"'{model}", cells["model"]);
        Assert.Equal("unchanged", (await Import(manager, csv, "?dryRun=true")).Json.GetProperty("rows")[0].GetProperty("act").GetString());
        Assert.Equal("unchanged", (await manager.PostFile("/api/v1/vehicles/import?dryRun=true", sheet, Sheet)).Json.GetProperty("rows")[0].GetProperty("act").GetString());
    }

    [Theory]
    [InlineData("make,model\nVelsey,Lade\n", "column 'vehicle'")]
    [InlineData("vehicle,colour\nvelsey-lade-2032,blue\n", "Unknown columns: colour")]
    [InlineData("vehicle,class\n\"velsey", "never closed")]
    [InlineData("", "empty")]
    public async Task Import_NoList_IsUnreadableWithTheReason(string csv, string reason)
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);

        var answer = await Import(manager, csv, "?dryRun=true");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains(reason, answer.Member("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_NoSpreadsheet_IsUnreadable()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await manager.PostFile("/api/v1/vehicles/import", "PK no zip"u8.ToArray(), Sheet)).Status);
    }

    private static Task<Reply> Import(HttpClient client, string csv, string query = "") =>
        client.PostFile($"/api/v1/vehicles/import{query}", Encoding.UTF8.GetBytes(csv), Csv);
}
