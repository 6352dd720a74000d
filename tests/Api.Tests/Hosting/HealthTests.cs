using System.Net;
using Toepan.Support;

namespace Toepan.Api.Tests.Hosting;

/// <summary>/health tells whether the database answers, to anybody.</summary>
public sealed class HealthTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Health_DatabaseAnswers_IsOk()
    {
        await using var api = await ApiHost.Start(postgres);
        using var nobody = api.Anonymous();

        using var answer = await nobody.GetAsync("/health", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("{\"status\":\"ok\"}", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Health_DatabaseGone_Is503ProblemDetailsAndRoutesSayTryAgain()
    {
        await using var api = await ApiHost.Start(postgres);
        using var analyst = await api.Machine(Toepan.Api.Security.Role.Analyst);
        var name = new Npgsql.NpgsqlConnectionStringBuilder(api.Connections.Owner).Database!;
        await postgres.Execute($"DROP DATABASE {name} WITH (FORCE)");

        using var health = await analyst.GetAsync("/health", TestContext.Current.CancellationToken);
        using var route = await analyst.GetAsync("/api/v1/tests", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.ServiceUnavailable, health.StatusCode);
        Assert.Equal("application/problem+json", health.Content.Headers.ContentType?.MediaType);
        Assert.Equal("application/problem+json", route.Content.Headers.ContentType?.MediaType);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, route.StatusCode);
    }
}
