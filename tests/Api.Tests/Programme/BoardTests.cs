using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Programme;

/// <summary>The board: what waits for whom, coverage (worked out by hand), and the calendar (RFC 5545).</summary>
public sealed class BoardTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Board_RunNotValid_WaitsForTheManagerUntilItIsDecided()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        using var analyst = await api.Machine(Role.Analyst);
        await manager.Bring(19);

        var before = await Tasks(manager);
        await manager.Post("/api/v1/tests/FO-0019/repeat-decisions", new { trigger = "conduct outside", choice = "leave", evidence = "Overlap", options = "Repeat", measuresSeen = false });

        Assert.Equal(["Decide on a repeat: the run is not valid."], before);
        Assert.Empty(await Tasks(manager));
        Assert.Empty(await Tasks(analyst));
    }

    [Fact]
    public async Task Board_PlannedDayPassed_WaitsForTheEngineer()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        using var engineer = await api.Machine(Role.Engineer);
        await manager.AddVehicle("velsey-lade-2032");
        await manager.Post("/api/v1/plan", new { test = "FO-0301", vehicle = "velsey-lade-2032", procedure = "offset-frontal-64", date = "2020-01-06" });

        Assert.Equal(["Move or make the run: its day has passed."], await Tasks(engineer));
    }

    [Fact]
    public async Task Board_Coverage_CountsAndWeighsTheWholeClass()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        await manager.Bring(2);
        var tested = (await manager.Read("/api/v1/tests/FO-0002")).Json;
        var (key, group) = (tested.GetProperty("vehicle").GetString()!, tested.GetProperty("class").GetString()!);
        var version = (await manager.Read($"/api/v1/vehicles/{key}")).Json.GetProperty("vehicle").GetProperty("version").GetUInt32();
        await manager.Put($"/api/v1/vehicles/{key}", new { @class = group, salesSharePercent = 30, version });
        await manager.AddVehicle("askervold-two", new { vehicle = "askervold-two", @class = group, salesSharePercent = 10 });
        await manager.AddVehicle("askervold-three", new { vehicle = "askervold-three", @class = group });

        var coverage = (await manager.Read("/api/v1/board")).Json.GetProperty("classes").EnumerateArray()
            .Single(row => row.GetProperty("class").GetString() == group).GetProperty("coverage");

        Assert.Equal((1, 3, 2, 75m), (coverage.GetProperty("tested").GetInt32(), coverage.GetProperty("planned").GetInt32(), coverage.GetProperty("withShare").GetInt32(), coverage.GetProperty("weightedPercent").GetDecimal()));
    }

    [Fact]
    public async Task Calendar_PlannedRuns_AreWholeDaysWithAnIdentityThatStays()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        await manager.AddVehicle("velsey-lade-2032");
        var plan = await manager.Post("/api/v1/plan", new { test = "FO-0301", vehicle = "velsey-lade-2032", procedure = "offset-frontal-64", date = "2031-03-14" });
        await manager.Put("/api/v1/plan/FO-0301", new { date = "2031-04-02", version = plan.Json.GetProperty("version").GetUInt32() });

        var feed = (await manager.Read("/api/v1/board/calendar.ics")).Text.Split("\r\n");

        Assert.Equal(("BEGIN:VCALENDAR", 1), (feed[0], feed.Count(line => line == "BEGIN:VEVENT")));
        Assert.Contains("UID:run-FO-0301@toepan", feed);
        Assert.Contains("DTSTART;VALUE=DATE:20310402", feed);
        Assert.Contains("DTEND;VALUE=DATE:20310403", feed);
        Assert.Contains("SUMMARY:FO-0301 Velsey Lade", feed);
    }

    private static async Task<string[]> Tasks(HttpClient client) =>
        [.. (await client.Read("/api/v1/board")).Json.GetProperty("needsYou").EnumerateArray().Select(task => task.GetProperty("what").GetString()!)];
}
