using System.Net;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages;

/// <summary>Who may bring packages and decide about channels: engineers, managers, administrators. Every role reads.</summary>
public sealed class UploadRolesTests(PostgresFixture postgres)
{
    [Theory]
    [InlineData(Role.Administrator, true)]
    [InlineData(Role.Manager, true)]
    [InlineData(Role.Engineer, true)]
    [InlineData(Role.Analyst, false)]
    [InlineData(Role.Reviewer, false)]
    [InlineData(Role.Communications, false)]
    public async Task Upload_ByRole_IsAllowedOrForbidden(Role role, bool allowed)
    {
        await using var api = await ApiHost.Start(postgres);
        using var client = await api.Machine(role);

        var upload = await client.Upload(TestPackages.Whole);
        var flag = await client.Post("/api/v1/tests/FO-0002/flags", new { channel = "11HEAD0000H3ACXP", kind = "unfit", reason = "loose" });
        var list = await client.Read("/api/v1/tests");

        Assert.Equal(allowed ? HttpStatusCode.Created : HttpStatusCode.Forbidden, upload.Status);
        Assert.Equal(allowed ? HttpStatusCode.Created : HttpStatusCode.Forbidden, flag.Status);
        Assert.Equal(HttpStatusCode.OK, list.Status);
    }

    [Fact]
    public async Task Upload_ByNobody_IsUnauthorized()
    {
        await using var api = await ApiHost.Start(postgres);
        using var nobody = api.Anonymous();

        Assert.Equal(HttpStatusCode.Unauthorized, (await nobody.Upload(TestPackages.Whole)).Status);
    }
}
