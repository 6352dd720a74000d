using System.Net;
using System.Text;
using Toepan.Api.Security;
using Toepan.Api.Tests.Programme;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Analysis.Historic;

public sealed class ResultRouteTests(PostgresFixture postgres)
{
    private const string Measures = "/api/v1/classes/old-class/measures?measure=head.hic15";

    [Fact]
    public async Task Import_UnknownNames_AreMadeKnownAndMarked()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);

        var dry = await engineer.Bring(ResultClient.File("head.hic15", ("A-1", "500"), ("77", "600.5")), "?dryRun=true");
        var before = (await engineer.Read("/api/v1/classes")).Json.GetArrayLength();
        var brought = await engineer.Bring(ResultClient.File("head.hic15", ("A-1", "500"), ("77", "600.5")));
        var known = (await engineer.Read("/api/v1/classes")).Json.EnumerateArray().Single(one => one.GetProperty("key").GetString() == "old-class");

        Assert.Equal((HttpStatusCode.OK, "2", ""), (dry.Status, dry.Member("created"), dry.Member("batch")));
        Assert.Equal(3, before);
        Assert.Equal((HttpStatusCode.Created, "2", "False"), (brought.Status, brought.Member("created"), brought.Member("dryRun")));
        Assert.Equal("""["old-class"]["old-procedure"]["old-a-1","old-77"]""", brought.Member("createdClasses") + brought.Member("createdProcedures") + brought.Member("createdVehicles"));
        Assert.Equal(("Old class", true), (known.GetProperty("title").GetString(), known.GetProperty("fromHistoricResults").GetBoolean()));
        Assert.Equal("3", await Entries(api, "entity LIKE 'results/%' OR entity = 'class/old-class'"));
    }

    [Fact]
    public async Task Import_SameAgain_CreatesNothingAndOtherContentIsAConflict()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        await engineer.Bring(ResultClient.File("head.hic15", ("A-1", "500"), ("A-2", "600")));

        var again = await engineer.Bring(ResultClient.File("head.hic15", ("A-2", "600.0"), ("A-1", "5e2")));
        var more = await engineer.Bring(ResultClient.File("head.hic15", ("A-2", "600"), ("A-3", "700")));
        var other = await engineer.Bring(ResultClient.File("head.hic15", ("A-4", "1"), ("A-2", "601")));

        Assert.Equal((HttpStatusCode.OK, "0", "2"), (again.Status, again.Member("created"), again.Member("unchanged")));
        Assert.Equal((HttpStatusCode.Created, "1", "1"), (more.Status, more.Member("created"), more.Member("unchanged")));
        Assert.Equal((HttpStatusCode.Conflict, """["A-2"]"""), (other.Status, other.Member("tests")));
        Assert.Equal("A-1 A-2 A-3", await Tests(engineer));
    }

    [Fact]
    public async Task Import_CodeOfAFullRun_IsAConflictAndTheOtherWayRound()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        await engineer.Bring(1);

        var summary = await engineer.Bring(ResultClient.File("head.hic15", ("FO-0001", "500")));
        var free = await engineer.Bring(ResultClient.File("head.hic15", ("FO-0002", "500")));
        var package = await engineer.PostFile("/api/v1/packages", Packages.TestPackages.Zip(2), "application/zip");

        Assert.Equal((HttpStatusCode.Conflict, """["FO-0001"]"""), (summary.Status, summary.Member("tests")));
        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Conflict), (free.Status, package.Status));
        Assert.Equal(free.Member("batch"), package.Member("batch"));
    }

    [Fact]
    public async Task Import_SeveralSeats_ShareTheVehiclesMeasures()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        const string Rows = "T-1,v-1,,,old-class,,p-1,,3,HF,,400,60\nT-1,v-1,,,old-class,,p-1,,1,H3,1500,300,\nT-2,v-1,,,,,p-1,,1,,,500,62\n";

        var brought = await engineer.Bring($"{ResultClient.Header},head.hic15,vehicle.deltav\r\n{Rows}");
        var all = (await engineer.Read("/api/v1/classes/old-class/measures?seat=all")).Json;
        var passenger = (await engineer.Read("/api/v1/classes/old-class/measures?seat=passenger&measure=head.hic15")).Json.GetProperty("rows");

        Assert.Equal(HttpStatusCode.Created, brought.Status);
        Assert.Equal(
            ["T-1/1/driver/H3:300,60", "T-1/3/passenger/HF:400,60", "T-2/1/driver/:500,62"],
            all.GetProperty("rows").EnumerateArray().Select(row => $"{row.GetProperty("test")}/{row.GetProperty("position")}/{row.GetProperty("seat")}/{row.GetProperty("dummy")}:{string.Join(',', row.GetProperty("values").EnumerateArray())}"));
        Assert.Equal([3, 2], all.GetProperty("statistics").EnumerateArray().Select(one => one.GetProperty("count").GetInt32()));
        Assert.Equal("T-1", Assert.Single(passenger.EnumerateArray()).GetProperty("test").GetString());
        Assert.Equal(("summary", System.Text.Json.JsonValueKind.Null), (passenger[0].GetProperty("kind").GetString(), passenger[0].GetProperty("valid").ValueKind));
    }

    [Fact]
    public async Task Import_Latin1AndSemicolons_AreRead()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        var text = $"{ResultClient.Header},head.hic15\nT-1,v-1,Vélsey,\"Long; \"\"wide\"\"\",old-class,,p-1,,1,,1500.5,500.25\n".Replace(';', '|').Replace(',', ';').Replace('|', ',').Replace('.', ',').Replace("head,hic15", "head.hic15", StringComparison.Ordinal);

        var brought = await engineer.Bring(Encoding.Latin1.GetBytes(text));
        var row = (await engineer.Read(Measures)).Json.GetProperty("rows")[0];

        Assert.Equal(HttpStatusCode.Created, brought.Status);
        Assert.Equal(("Vélsey", "Long, \"wide\"", 1500.5, 500.25), (row.GetProperty("make").GetString(), row.GetProperty("model").GetString(), row.GetProperty("testMassKg").GetDouble(), row.GetProperty("values")[0].GetDouble()));
    }

    [Theory]
    [InlineData("T 1,v-1,,,c-1,2000,p-1,2000-01-01,1,H3,1500,500", 2, "test", "T 1", "results.value")]
    [InlineData("T-1,,,,c-1,2000,p-1,2000-01-01,1,H3,1500,500", 2, "vehicle", "", "results.missing")]
    [InlineData("T-1,v-1,,,c-1,20x0,p-1,2000-01-01,1,H3,1500,500", 2, "modelYear", "20x0", "results.value")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1,01.02.2000,1,H3,1500,500", 2, "date", "01.02.2000", "results.value")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1,2000-01-01,0,H3,1500,500", 2, "position", "0", "results.value")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1,2000-01-01,1,XX,1500,500", 2, "dummy", "XX", "results.value")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1,2000-01-01,1,H3,7,500", 2, "testMassKg", "7", "results.range")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1,2000-01-01,1,H3,1500,abc", 2, "head.hic15", "abc", "results.value")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1,2000-01-01,1,H3,1500,NaN", 2, "head.hic15", "NaN", "results.value")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1,2000-01-01,1,H3,1500,2e9", 2, "head.hic15", "2000000000", "results.range")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1,2000-01-01,,H3,1500,500", 2, "position", "", "results.missing")]
    [InlineData("T-1,v-1,,,,2000,p-1,2000-01-01,1,H3,1500,500", 2, "class", "", "results.missing")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1,2000-01-01,1,H3,1500,500\nT-1,v-2,,,c-1,2000,p-1,2000-01-01,3,H3,1500,500", 3, "vehicle", "v-2", "results.disagrees")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1,2000-01-01,1,H3,1500,500\nT-1,v-1,,,c-1,2000,p-1,2000-01-01,1,H3,1500,500", 3, "position", "1", "results.position-twice")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1,2000-01-01,1,H3,1500,500\nT-2,v-1,,,c-2,2000,p-1,2000-01-01,1,H3,1500,500", 3, "class", "c-2", "results.disagrees")]
    [InlineData("T-1,v-1,,,c-1,2000,p-1", 2, null, "7", "results.field-count")]
    public async Task Import_BadRow_NamesLineColumnValueAndLimitAndTakesNothing(string rows, int line, string? column, string value, string code)
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);

        var answer = await engineer.Bring($"{ResultClient.Header},head.hic15\n{rows}\nT-9,v-9,,,c-1,2000,p-1,2000-01-01,1,H3,1500,500\n");
        var problem = answer.Json.GetProperty("problems")[0];

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Equal((line, column, value, code), (problem.GetProperty("line").GetInt32(), problem.GetProperty("column").GetString(), problem.GetProperty("value").GetString(), problem.GetProperty("code").GetString()));
        Assert.NotEmpty(problem.GetProperty("limit").GetString()!);
        Assert.Equal("0", (await engineer.Read("/api/v1/results")).Member("total"));
    }

    [Theory]
    [InlineData("", "results.unreadable")]
    [InlineData("test,vehicle\nT-1,v-1\n", "results.missing-column")]
    [InlineData(ResultClient.Header + ",head.hic99\n", "results.unknown-column")]
    [InlineData(ResultClient.Header + ",structure.<point>.rearward\n", "results.unknown-column")]
    [InlineData(ResultClient.Header + ",head.hic15,head.hic15\n", "results.duplicate-column")]
    [InlineData(ResultClient.Header + "\n", "results.unreadable")]
    [InlineData(ResultClient.Header + "\n\"T-1", "results.quote")]
    [InlineData(ResultClient.Header + "\nT-1\0", "results.unreadable")]
    public async Task Import_NoTable_IsUnreadableWithTheReason(string csv, string code)
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);

        var answer = await engineer.Bring(csv);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Equal(code, answer.Json.GetProperty("problems")[0].GetProperty("code").GetString());
    }

    [Fact]
    public async Task Withdraw_Batch_LeavesStatisticsAndTheCodeFree()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        var batch = (await engineer.Bring(ResultClient.File("head.hic15", ("A-1", "500"), ("A-2", "600")))).Member("batch");
        await Tests(engineer);

        var silent = await engineer.Post($"/api/v1/results/batches/{batch}/withdrawal", new { reason = " " });
        var done = await engineer.Post($"/api/v1/results/batches/{batch}/withdrawal", new { reason = "Wrong unit" });
        var twice = await engineer.Post($"/api/v1/results/batches/{batch}/withdrawal", new { reason = "Wrong unit" });
        var after = await Tests(engineer);
        var again = await engineer.Bring(ResultClient.File("head.hic15", ("A-1", "501")));

        Assert.Equal((HttpStatusCode.BadRequest, HttpStatusCode.OK, HttpStatusCode.Conflict), (silent.Status, done.Status, twice.Status));
        Assert.Equal("Wrong unit", done.Json.GetProperty("withdrawn").GetProperty("reason").GetString());
        Assert.Equal(("", HttpStatusCode.Created), (after, again.Status));
    }

    [Fact]
    public async Task Import_Replacing_TakesThePlaceOfTheBatch()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        var batch = (await engineer.Bring(ResultClient.File("head.hic15", ("A-1", "500"), ("A-2", "600")))).Member("batch");

        var silent = await engineer.Bring(ResultClient.File("head.hic15", ("A-1", "501")), $"?replaces={batch}");
        var done = await engineer.Bring(ResultClient.File("head.hic15", ("A-1", "501")), $"?replaces={batch}&reason=Rounded");
        var unknown = await engineer.Bring(ResultClient.File("head.hic15", ("A-1", "501")), "?replaces=99&reason=Rounded");

        Assert.Equal((HttpStatusCode.BadRequest, HttpStatusCode.Created, HttpStatusCode.NotFound), (silent.Status, done.Status, unknown.Status));
        Assert.Equal((batch, "A-1"), (done.Member("replaced"), await Tests(engineer)));
    }

    [Fact]
    public async Task Import_BySomebodyWhoMayNot_IsForbidden()
    {
        await using var api = await ApiHost.Start(postgres);
        using var analyst = await api.Machine(Role.Analyst);

        Assert.Equal(HttpStatusCode.Forbidden, (await analyst.Bring(ResultClient.File("head.hic15", ("A-1", "500")))).Status);
    }

    [Fact]
    public async Task Summary_Anywhere_IsNoRunAndNoVehicleOfTheBoard()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        await engineer.Bring(ResultClient.File("head.hic15", ("A-1", "500")));

        Assert.Equal("[]", (await engineer.Read("/api/v1/tests")).Text);
        Assert.Equal(HttpStatusCode.NotFound, (await engineer.Read("/api/v1/tests/A-1/rating")).Status);
        Assert.DoesNotContain("old-a-1", (await engineer.Read("/api/v1/board")).Text, StringComparison.Ordinal);
        Assert.Empty((await engineer.Read($"{Measures}&runs=rating")).Json.GetProperty("rows").EnumerateArray());
    }

    private static async Task<string> Tests(HttpClient client) =>
        string.Join(' ', (await client.Read(Measures)).Json.GetProperty("rows").EnumerateArray().Select(row => row.GetProperty("test").GetString()));

    private static async Task<string> Entries(ApiHost api, string where) =>
        (await Sql.Scalar(api.Connections.Service, $"SELECT count(*) FROM lab.audit WHERE {where}"))!.ToString()!;
}
