using System.Net;
using Toepan.Api.Security;
using Toepan.Api.Tests.Packages;
using Toepan.Support;

namespace Toepan.Api.Tests.Programme;

/// <summary>What managers arrange: twins and classes.</summary>
public sealed class ArrangementTests(PostgresFixture postgres)
{
    [Fact]
    public async Task AddTwin_ByManager_SharesTheRatingOfTheValidRun()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestPackages.Zip(5));
        await lab.Upload(TestPackages.Zip(6));
        using var manager = await api.Machine(Role.Manager);
        const string Vehicle = "/api/v1/vehicles/askervold-lade-2032";
        var twin = new { vehicle = "askervold-lade-long-2032", make = "Askervold", model = "Lade Long", evidence = "Body drawing 7 of 2031" };

        var added = await manager.Post($"{Vehicle}/twins", twin);
        var twice = await manager.Post($"{Vehicle}/twins", twin);
        var byEngineer = await lab.Post($"{Vehicle}/twins", twin);

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Conflict, HttpStatusCode.Forbidden), (added.Status, twice.Status, byEngineer.Status));
        var vehicle = (await lab.Read(Vehicle)).Json;
        Assert.Equal("FO-0006", vehicle.GetProperty("ratedBy").GetString());
        Assert.Equal("Body drawing 7 of 2031", vehicle.GetProperty("twins")[0].GetProperty("evidence").GetString());
        Assert.Equal("askervold-lade-2032", (await lab.Read("/api/v1/vehicles/askervold-lade-long-2032")).Member("sharesRatingOf"));
    }

    [Fact]
    public async Task AddClass_ByManager_LetsPackagesNameIt()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        using var manager = await api.Machine(Role.Manager);
        var package = TestPackages.WithProgramme(TestPackages.Whole, text => text.Replace("delivery-van", "tow-truck", StringComparison.Ordinal));

        var before = await lab.Upload(package);
        var added = await manager.Post("/api/v1/classes", new { key = "tow-truck", title = "Tow trucks" });
        var after = await lab.Upload(package);

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.Created, HttpStatusCode.Created), (before.Status, added.Status, after.Status));
    }
}
