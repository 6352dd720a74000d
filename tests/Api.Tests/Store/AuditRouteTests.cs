using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Store;

/// <summary>The history read, filtered, paged, taken out and verified over HTTP.</summary>
public sealed class AuditRouteTests(PostgresFixture postgres)
{
    [Fact]
    public async Task List_FilteredAndPaged_GivesEveryEntryOnce()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Administrator);
        await AddClasses(lab, 5);

        var first = await Read(lab, "/api/v1/audit?action=add%20class&size=3");
        var second = await Read(lab, $"/api/v1/audit?action=add%20class&size=3&before={first.GetProperty("older").GetInt64()}");
        var one = await Read(lab, "/api/v1/audit?entity=class/class-2");
        var nobody = await Read(lab, "/api/v1/audit?who=nobody");
        var future = await Read(lab, "/api/v1/audit?from=2999-01-01T00:00:00Z");

        Assert.Equal(
            ["class/class-5", "class/class-4", "class/class-3", "class/class-2", "class/class-1"],
            Entities(first).Concat(Entities(second)));
        Assert.Equal(JsonValueKind.Null, second.GetProperty("older").ValueKind);
        Assert.Equal("Class 2", Assert.Single(one.GetProperty("entries").EnumerateArray()).GetProperty("after").GetProperty("title").GetString());
        Assert.Empty(Entities(nobody));
        Assert.Empty(Entities(future));
    }

    [Fact]
    public async Task Export_JsonLinesAndCsv_HoldTheSameEntries()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Manager);
        await AddClasses(lab, 2);

        var lines = (await lab.GetStringAsync("/api/v1/audit/export?action=add%20class", TestContext.Current.CancellationToken)).TrimEnd('\n').Split('\n');
        var csv = (await lab.GetStringAsync("/api/v1/audit/export?action=add%20class&format=csv", TestContext.Current.CancellationToken)).TrimEnd().Split("\r\n");

        var first = JsonDocument.Parse(lines[0]).RootElement;
        Assert.Equal(2, lines.Length);
        Assert.Equal("class/class-1", first.GetProperty("entity").GetString());
        Assert.Equal("Class 1", first.GetProperty("after").GetProperty("title").GetString());
        Assert.Equal("sequence,at,who,action,entity,before,after,previousHash,hash", csv[0]);
        Assert.Equal(3, csv.Length);
        Assert.StartsWith($"{first.GetProperty("sequence").GetInt64()},{first.GetProperty("at").GetString()},", csv[1], StringComparison.Ordinal);
        Assert.EndsWith(first.GetProperty("hash").GetString()!, csv[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Verification_WholeThenForged_SaysSoOnRouteAndPage()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Administrator);
        using var person = await api.Person(Role.Manager);
        await AddClasses(lab, 3);

        var whole = await Read(lab, "/api/v1/audit/verification");
        var wholePage = await person.Client.GetStringAsync("/audit", TestContext.Current.CancellationToken);
        await Sql.Execute(api.Connections.Owner, "UPDATE lab.audit SET who = 'forger' WHERE sequence = 3");
        var forged = await Read(lab, "/api/v1/audit/verification");
        var forgedPage = await person.Client.GetStringAsync("/audit", TestContext.Current.CancellationToken);

        Assert.True(whole.GetProperty("whole").GetBoolean());
        Assert.Contains("The chain is whole", wholePage, StringComparison.Ordinal);
        Assert.Equal(3, forged.GetProperty("brokenAt").GetInt64());
        Assert.Contains("At entry 3", forgedPage, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Role.Engineer)]
    [InlineData(Role.Analyst)]
    [InlineData(Role.Reviewer)]
    [InlineData(Role.Communications)]
    public async Task EveryRoute_OtherRoles_IsRefused(Role role)
    {
        await using var api = await ApiHost.Start(postgres);
        using var machine = await api.Machine(role);
        foreach (var path in (string[])["", "/export", "/verification"])
        {
            Assert.Equal(HttpStatusCode.Forbidden, (await machine.GetAsync($"/api/v1/audit{path}", TestContext.Current.CancellationToken)).StatusCode);
        }
    }

    [Fact]
    public void Difference_NestedValues_AreFieldsByPath()
    {
        var fields = AuditDifference.Of(
            """{"facts":{"mass":1690,"name":"Voyle"},"years":[2030,2032],"parts":[{"a":1}],"old":true}""",
            """{"facts":{"mass":1700,"name":"Voyle"},"years":[2030],"parts":[{"a":1},{"a":2}],"new":null}""");

        Assert.Equal(
            [
                new("facts · mass", "1690", "1700"), new("facts · name", "Voyle", "Voyle"), new("years", "2030, 2032", "2030"), new("parts · 1 · a", "1", "1"),
                new("old", "yes", null), new("parts · 2 · a", null, "2"), new("new", null, "nothing"),
            ],
            fields);
        Assert.Equal(["facts · mass", "years", "old", "parts · 2 · a", "new"], fields.Where(field => field.Changed).Select(field => field.Field));
    }

    private static async Task AddClasses(HttpClient lab, int count)
    {
        for (var number = 1; number <= count; number++)
        {
            using var answer = await lab.PostAsJsonAsync("/api/v1/classes", new { key = $"class-{number}", title = $"Class {number}" }, TestContext.Current.CancellationToken);
            Assert.True(answer.IsSuccessStatusCode);
        }
    }

    private static Task<JsonElement> Read(HttpClient client, string path) => client.GetFromJsonAsync<JsonElement>(path, TestContext.Current.CancellationToken);

    private static IEnumerable<string?> Entities(JsonElement page) => page.GetProperty("entries").EnumerateArray().Select(entry => entry.GetProperty("entity").GetString());
}
