using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Npgsql;
using Toepan.Api.Security;
using Toepan.Api.Tests.Packages;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Embargo;

/// <summary>A service whose whole programme is unreleased and full of marks, brought through the same routes as anyone's.</summary>
public sealed class PlantedProgramme(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly List<string> secrets = [];
    private HttpClient lab = null!;

    public ApiHost Api { get; private set; } = null!;

    internal Marks Marks { get; } = Marks.Chosen();

    /// <summary>What no response may hold, whoever asks.</summary>
    internal IReadOnlyCollection<string> Secrets => secrets;

    /// <summary>Route parameters by the word before them and their own, with a value of the planted data and an unknown one.</summary>
    internal Dictionary<string, RouteValue> Values { get; } = [];

    /// <summary>The planted data as query parameters that pages and routes take, and the same with unknown values.</summary>
    internal RouteValue Query { get; private set; } = new("", "");

    public async ValueTask InitializeAsync()
    {
        Api = await ApiHost.Start(postgres);
        using var administrator = await Api.Machine(Role.Administrator);
        lab = await Machine(administrator, Marks.In("machine"), Enum.GetValues<Role>());
        await PlantVehicles();
        await PlantRuns();
        await PlantEquipment();
        await PlantAttachments();
        await PlantReviews(administrator);
        await PlantPlans();
        await PlantPeople(administrator);
        await EmbargoedRows.Plant(Api.Connections, Marks);
        await FindValues();
        FindQuery();
        await CollectSecrets();
    }

    public async ValueTask DisposeAsync()
    {
        lab.Dispose();
        await Api.DisposeAsync();
    }

    private async Task<HttpClient> Machine(HttpClient administrator, string name, IEnumerable<Role> roles)
    {
        var issued = await Create(administrator, "/api/v1/tokens", new { name, roles = roles.Select(ViewerClaims.Name) });
        var secret = issued.GetProperty("secret").GetString()!;
        secrets.Add(secret);
        var client = Api.Anonymous();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", secret);
        return client;
    }

    private async Task PlantVehicles()
    {
        await Create(lab, "/api/v1/classes", new { key = Marks.In("class"), title = Marks.In("class-title") });
        await Create(lab, "/api/v1/vehicles", new
        {
            vehicle = Marks.In("planned"), make = Marks.In("make"), model = Marks.In("model"), @class = Marks.In("class"), kerbMassKg = 1700,
            restraintEquipment = Marks.In("restraint"),
        });
    }

    private async Task PlantRuns()
    {
        await Upload(PlantedPackage.Zip(Marks, 2, Marks.Test(1)));
        await Upload(PlantedPackage.Zip(Marks, 19, Marks.Test(2)));
        var (vehicle, run) = ($"/api/v1/vehicles/{Marks.In("vehicle")}", $"/api/v1/tests/{Marks.Test(1)}");
        await Create(lab, $"{vehicle}/twins", new { vehicle = Marks.In("twin"), make = Marks.In("make"), model = Marks.In("model"), evidence = Marks.In("evidence") });
        await Create(lab, $"/api/v1/vehicles/{Marks.In("planned")}/carry-over", new { from = Marks.In("vehicle"), reason = Marks.In("reason"), evidence = Marks.In("evidence") });
        await Create(lab, $"{vehicle}/specimens", new
        {
            test = Marks.Test(1), serial = "TEST0000000000017", options = Marks.In("options"), purchasedFrom = Marks.In("dealer"), purchaseReference = Marks.In("invoice"),
        });
        await Create(lab, $"{run}/findings", new
        {
            timeMs = 71, camera = Marks.In("camera"), kind = "floor-buckled", region = "structure", severity = "note", note = Marks.In("note"), reason = Marks.In("reason"),
        });
        var channels = (await Read($"{run}/channels")).EnumerateArray().Select(channel => channel.GetProperty("code").GetString()!).ToArray();
        await Create(lab, $"{run}/flags", new { channel = channels[^1], kind = "unfit", reason = Marks.In("flag") });
        var flags = await Read($"{run}/flags");
        await Create(lab, $"{run}/flags/{flags[0].GetProperty("id")}/withdrawal", new { reason = Marks.In("withdrawal") });
        await Create(lab, $"/api/v1/tests/{Marks.Test(2)}/repeat-decisions", new
        {
            trigger = "conduct outside", choice = "repeat", evidence = Marks.In("evidence"), options = Marks.In("options"), measuresSeen = true,
        });
    }

    /// <summary>A dummy with its calibration, a check it failed, and the run it sat in.</summary>
    private async Task PlantEquipment()
    {
        await Create(lab, "/api/v1/equipment", new { kind = "dummy", serial = Marks.In("serial"), title = Marks.In("dummy"), range = Marks.In("range"), note = Marks.In("remark") });
        Values["equipment/id"] = await Number("SELECT max(id) FROM lab.equipment");
        var equipment = $"/api/v1/equipment/{Values["equipment/id"].Real}";
        await Create(lab, $"{equipment}/calibrations", new { on = "2031-01-10", dueOn = "2032-01-10", certificate = Marks.In("certificate") });
        await Create(lab, $"/api/v1/tests/{Marks.Test(2)}/equipment", new { equipment = long.Parse(Values["equipment/id"].Real, System.Globalization.CultureInfo.InvariantCulture), position = 1 });
        await Create(lab, $"{equipment}/checks", new { part = "neck", passed = true, on = "2031-02-01", note = Marks.In("check") });
    }

    /// <summary>A photograph for the sheet and a film, attached after the run.</summary>
    private async Task PlantAttachments()
    {
        var photograph = await Attach("jpg", "image/jpeg", PlantedPhotograph.With(Marks.In("later-exif")));
        await Change($"/api/v1/attachments/{photograph}/sheet", new { alternativeText = Marks.In("alternative"), version = 1 });
        var film = await Attach("mp4", "video/mp4", PlantedPackage.Film(Marks.In("later-film")));
        await Change($"/api/v1/attachments/{film}/film-times", new { framesPerSecond = 1000, timeZeroFrame = 12, reason = Marks.In("reason"), version = 0 });
        Values["attachments/id"] = RouteValue.OfNumber(photograph);
    }

    private async Task<long> Attach(string extension, string mediaType, byte[] bytes)
    {
        var path = $"/api/v1/tests/{Marks.Test(1)}/attachments?name={Marks.In("attached")}.{extension}&caption={Marks.In("caption")}&camera={Marks.In("camera")}";
        using var body = new ByteArrayContent(bytes);
        body.Headers.ContentType = new MediaTypeHeaderValue(mediaType);
        using var answer = await lab.PostAsync(path, body, TestContext.Current.CancellationToken);
        await Demand(answer, path);
        return (await answer.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("id").GetInt64();
    }

    private async Task Change(string path, object body)
    {
        using var answer = await lab.PutAsJsonAsync(path, body, TestContext.Current.CancellationToken);
        await Demand(answer, path);
    }

    /// <summary>By another than the uploader; one act stays, one is taken back.</summary>
    private async Task PlantReviews(HttpClient administrator)
    {
        using var reviewer = await Machine(administrator, Marks.In("reviewer"), [Role.Reviewer, Role.Engineer]);
        var reviews = $"/api/v1/tests/{Marks.Test(1)}/reviews";
        var rating = (await Read(reviews)).GetProperty("ratingId");
        await Create(reviewer, reviews, new { kind = "sign", part = "conduct", note = Marks.In("signed"), ratingId = rating });
        await Create(reviewer, reviews, new { kind = "send back", part = "data", note = Marks.In("sent-back"), ratingId = rating });
        Values["reviews/act"] = Values["review/act"] = await Number("SELECT min(id) FROM lab.review_act");
        var last = await Sql.Scalar(Api.Connections.Owner, "SELECT max(id) FROM lab.review_act");
        await Create(reviewer, $"{reviews}/{last}/withdrawal", new { reason = Marks.In("taken-back") });
    }

    private async Task PlantPlans()
    {
        await Create(lab, "/api/v1/plan", new { test = Marks.Test(3), vehicle = Marks.In("planned"), procedure = "offset-frontal-64", date = "2031-09-01" });
        await Create(lab, $"/api/v1/tests/{Marks.Test(3)}/preparation", new { items = new Dictionary<string, string> { ["barrier-batch"] = Marks.In("batch") }, version = 0 });
        await Create(lab, "/api/v1/questions", new { name = Marks.In("question"), address = $"/explore?x=head.hic15&view=groups&class={Marks.In("class")}" });
        await Summary(Marks.Test(8));
        await Create(lab, $"/api/v1/results/batches/{await Sql.Scalar(Api.Connections.Owner, "SELECT max(id) FROM lab.result_batch")}/withdrawal", new { reason = Marks.In("withdrawal") });
        await Summary(Marks.Test(9));
        await Read($"/api/v1/tests/{Marks.Test(1)}/measures");
    }

    private async Task Summary(string test)
    {
        using var results = new StringContent(
            "test,vehicle,make,model,class,modelYear,procedure,date,position,dummy,testMassKg,head.hic15\n"
            + $"{test},{Marks.In("historic")},{Marks.In("make")},{Marks.In("model")},{Marks.In("class")},2025,offset-frontal-64,2025-03-01,1,H3,1800,321.5\n",
            Encoding.UTF8, "text/csv");
        using var answer = await lab.PostAsync("/api/v1/results", results, TestContext.Current.CancellationToken);
        await Demand(answer, "/api/v1/results");
    }

    private async Task PlantPeople(HttpClient administrator)
    {
        var planted = new TestAccount(Marks.In("person"), $"{Marks.Restricted} password");
        await Create(administrator, "/api/v1/accounts", new { name = planted.Name, password = planted.Password, roles = new[] { "engineer" } });
        var invited = await Create(administrator, "/api/v1/invitations", new { whom = $"{Marks.Restricted} invited", roles = new[] { "analyst" } });
        var issued = await Create(administrator, "/api/v1/tokens", new { name = $"{Marks.Restricted} machine", roles = new[] { "analyst" } });
        secrets.AddRange([planted.Password, invited.GetProperty("path").GetString()!.Split('=')[1], issued.GetProperty("secret").GetString()!]);
        secrets.AddRange(await PlantedAccount.Furnish(Api, planted, $"{Marks.Restricted} script"));
    }

    private async Task FindValues()
    {
        var (test, planned) = (Marks.Test(1), Marks.Test(3));
        var run = $"/api/v1/tests/{test}";
        foreach (var place in (string[])["tests/test", "preview/test"])
        {
            Values[place] = RouteValue.Of(test);
        }

        Values["/path"] = RouteValue.Of(Marks.In("photo") + ".jpg");
        Values["openapi/documentName"] = new("v1", "v9");
        Values["plan/test"] = RouteValue.Of(planned);
        Values["vehicles/key"] = RouteValue.Of(Marks.In("vehicle"));
        Values["classes/class"] = RouteValue.Of(Marks.In("class"));
        Values["procedures/key"] = RouteValue.Of("offset-frontal-64");
        Values["procedures/key/edition"] = new("1", "9");
        Values["sheets/slug"] = Values["releases/slug"] = RouteValue.Of(Marks.In("slug"));
        Values["v/n"] = Values["v/version"] = new("1", "9");
        Values["channels/code"] = RouteValue.Of((await Read($"{run}/channels"))[0].GetProperty("code").GetString()!);
        Values["flags/flag"] = await Number("SELECT max(id) FROM lab.channel_flag");
        Values["findings/finding"] = Values["findings/id"] = RouteValue.Of((await Read($"{run}/findings"))[0].GetProperty("id").ToString());
        Values["specimens/id"] = Values["specimens/specimen"] = await Number("SELECT max(id) FROM lab.specimen");
        Values["batches/id"] = await Number("SELECT max(id) FROM lab.result_batch");
        Values["questions/id"] = await Number("SELECT max(id) FROM lab.saved_question");
        Values["accounts/id"] = Values["people/id"] = await Key($"SELECT id::text FROM lab.account WHERE user_name = '{Marks.In("person")}'");
        Values["tokens/id"] = await Key($"SELECT id::text FROM lab.token WHERE name = '{Marks.Restricted} machine'");
        Values["invitations/id"] = await Key("SELECT id::text FROM lab.invitation");
    }

    /// <summary>Parameters by the names that pages and routes read; whoever does not know one passes over it.</summary>
    private void FindQuery()
    {
        RouteValue[] values = [Values["tests/test"], RouteValue.Of(Marks.Test(2)), Values["vehicles/key"], Values["classes/class"], Values["attachments/id"]];
        Query = new(Text(value => value.Real), Text(value => value.Unknown));

        string Text(Func<RouteValue, string> choose)
        {
            var of = Array.ConvertAll(values, value => choose(value));
            return $"?test={of[0]}&tests={of[0]},{of[1]}&runs={of[0]}&vehicle={of[2]}&class={of[3]}&attachment={of[4]}&film={of[4]}&x=head.hic15&measure=head.hic15&return=/tests/{of[0]}";
        }
    }

    private async Task CollectSecrets()
    {
        const string Stored = """
            SELECT password_hash FROM lab.account WHERE password_hash IS NOT NULL
            UNION ALL SELECT security_stamp FROM lab.account
            UNION ALL SELECT unnest(ARRAY[encode(hash, 'hex'), encode(hash, 'base64')]) FROM lab.token
            UNION ALL SELECT unnest(ARRAY[encode(hash, 'hex'), encode(hash, 'base64')]) FROM lab.invitation
            UNION ALL SELECT unnest(ARRAY[encode(hash, 'hex'), encode(hash, 'base64')]) FROM lab.recovery_code
            UNION ALL SELECT protected_key FROM lab.second_factor
            UNION ALL SELECT (regexp_match(xml, '<value>([^<]+)</value>'))[1] FROM lab.data_protection_key
            """;
        secrets.AddRange(await Sql.Column(Api.Connections.Owner, Stored));
        secrets.AddRange(new[] { Api.Connections.Owner, Api.Connections.Service, Api.Connections.Public, Api.Connections.Analyst }.OfType<string>()
            .Select(one => new NpgsqlConnectionStringBuilder(one).Password!));
    }

    private async Task<RouteValue> Number(string query) => RouteValue.OfNumber(Convert.ToInt64(await Sql.Scalar(Api.Connections.Owner, query), System.Globalization.CultureInfo.InvariantCulture));

    private async Task<RouteValue> Key(string query) => new((string)(await Sql.Scalar(Api.Connections.Owner, query))!, "0190a6c7-1111-7aaa-8bbb-123456789abc");

    private async Task Upload(byte[] zip)
    {
        var answer = await lab.Upload(zip);
        Assert.True(answer.Status == System.Net.HttpStatusCode.Created, answer.Json.ToString());
    }

    private Task<JsonElement> Read(string path) => lab.GetFromJsonAsync<JsonElement>(path, TestContext.Current.CancellationToken);

    private static async Task<JsonElement> Create(HttpClient client, string path, object body)
    {
        using var answer = await client.PostAsJsonAsync(path, body, TestContext.Current.CancellationToken);
        await Demand(answer, path);
        return await answer.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken);
    }

    private static async Task Demand(HttpResponseMessage answer, string path) =>
        Assert.True(answer.IsSuccessStatusCode, $"{path}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)}");
}
