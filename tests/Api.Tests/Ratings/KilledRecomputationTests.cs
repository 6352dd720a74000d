using System.Net;
using System.Net.Http.Headers;
using Npgsql;
using Toepan.Api.Security;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;
using Toepan.Api.Tests.Packages;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Ratings;

/// <summary>The service killed in the middle of rating every run anew: the next start finishes, no run is done twice and none is missing.</summary>
public sealed class KilledRecomputationTests(PostgresFixture postgres) : IDisposable
{
    private const int Runs = 1_501;
    private const string Key = "offset-frontal-2";
    private readonly DirectoryInfo folder = TestFolders.Create();

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Kill_InMidAdoption_FinishesAfterRestart()
    {
        var connections = await postgres.CreateDatabase();
        var owner = connections.Owner;
        var secret = await Token(owner);
        long id;
        int done;
        using (var service = await Start(connections))
        {
            using var lab = Client(service, secret);
            Assert.Equal(HttpStatusCode.Created, (await lab.Upload(TestPackages.Zip(2))).Status);
            await Multiply(owner);
            Assert.Equal(HttpStatusCode.Created, (await lab.Bring(SchemeClient.Strict())).Status);
            var whatIf = (await lab.Read($"/api/v1/schemes/{Key}/what-if")).Json;
            Assert.Equal(Runs, whatIf.GetProperty("changes").GetArrayLength());
            id = (await lab.Act($"/api/v1/schemes/{Key}/adopt", new { confirm = Key, reason = "stricter" })).Json.GetProperty("id").GetInt64();
            done = await UntilBegun(owner);
            service.Signal("KILL");
            await service.WaitForExit();
        }

        Assert.InRange(done, 1, Runs - 1);
        Assert.InRange((int)await Count(owner, "SELECT count(*) FROM lab.recomputation_step"), done, Runs - 1);
        using var again = await Start(connections);
        using var reader = Client(again, secret);
        var finished = (await reader.WaitFor(id, "finished")).GetProperty("summary");

        Assert.Equal((Runs, Runs), (finished.GetProperty("runs").GetInt32(), finished.GetProperty("done").GetInt32()));
        Assert.Equal(Runs, await Count(owner, "SELECT count(DISTINCT test) FROM lab.recomputation_step"));
        Assert.Equal(Runs, await Count(owner, $"SELECT count(*) FROM lab.rating WHERE scheme = '{Key}'"));
        Assert.Equal(2L * Runs, await Count(owner, "SELECT count(*) FROM lab.current_rating"));
        Assert.Equal(0, await Count(
            owner, $"SELECT count(*) FROM (SELECT DISTINCT ON (c.test) r.scheme FROM lab.current_rating c JOIN lab.rating r ON r.id = c.rating_id ORDER BY c.test, c.id DESC) x WHERE scheme <> '{Key}'"));
        Assert.Equal(0, await Count(owner, "SELECT count(lab.first_broken_audit())"));
    }

    private async Task<ServiceProcess> Start(StoreConnections connections)
    {
        var service = ServiceProcess.Launch(
            Path.Combine(folder.FullName, "data"), "--ConnectionStrings:Programme", connections.Owner, "--Store:ServiceRole", connections.ServiceRole,
            "--Store:PublicRole", connections.PublicRole);
        await service.WaitForHealth(HttpStatusCode.OK);
        return service;
    }

    private static HttpClient Client(ServiceProcess service, string secret)
    {
        var client = new HttpClient { BaseAddress = service.Address };
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", secret);
        return client;
    }

    private static async Task<string> Token(string owner)
    {
        var secret = TokenSecret.New();
        await using var source = NpgsqlDataSource.Create(owner);
        await using var db = new ProgrammeDb(ProgrammeDbOptions.For(source));
        db.Add(new TokenRow { Name = "test", Hash = TokenSecret.Hash(secret), Roles = [Role.Manager, Role.Engineer], CreatedAt = DateTimeOffset.UtcNow, CreatedBy = "test" });
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        return secret;
    }

    private static async Task<int> UntilBegun(string owner)
    {
        for (var tries = 0; tries < 3_000; tries++)
        {
            if (await Count(owner, "SELECT count(*) FROM lab.recomputation_step") is > 0 and var done)
            {
                return (int)done;
            }
        }

        throw new TimeoutException("The work did not begin.");
    }

    private static async Task<long> Count(string owner, string query) => (long)(await Sql.Scalar(owner, query))!;

    /// <summary>Copies of the one run that was uploaded, under codes of their own.</summary>
    private static Task<int> Multiply(string owner) => Sql.Execute(
        owner,
        """
        INSERT INTO lab.test_run SELECT (jsonb_populate_record(t, jsonb_build_object('test', 'CO-' || (1000 + n)))).* FROM lab.test_run t, generate_series(1, 1500) n;
        INSERT INTO lab.reduction OVERRIDING SYSTEM VALUE
          SELECT (jsonb_populate_record(r, jsonb_build_object('test', 'CO-' || (1000 + n), 'id', 1000 + n))).* FROM lab.reduction r, generate_series(1, 1500) n;
        INSERT INTO lab.measure SELECT (jsonb_populate_record(m, jsonb_build_object('reduction_id', 1000 + n))).* FROM lab.measure m, generate_series(1, 1500) n;
        INSERT INTO lab.rating OVERRIDING SYSTEM VALUE
          SELECT (jsonb_populate_record(r, jsonb_build_object('reduction_id', 1000 + n, 'id', 1000 + n))).* FROM lab.rating r, generate_series(1, 1500) n;
        INSERT INTO lab.current_rating OVERRIDING SYSTEM VALUE
          SELECT (jsonb_populate_record(c, jsonb_build_object('test', 'CO-' || (1000 + n), 'rating_id', 1000 + n, 'id', 1000 + n))).* FROM lab.current_rating c, generate_series(1, 1500) n;
        SELECT setval(pg_get_serial_sequence('lab.' || t, 'id'), 100000) FROM unnest(ARRAY['reduction', 'rating', 'current_rating']) t;
        """);
}
