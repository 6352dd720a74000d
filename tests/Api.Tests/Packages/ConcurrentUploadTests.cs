using System.Net;
using Toepan.Api.Security;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages;

/// <summary>Uploads at the same moment: the advisory lock of the test code lets one in at a time.</summary>
public sealed class ConcurrentUploadTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Upload_SameBytesAtOnce_StoresOneAndKnowsTheOther()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);

        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => lab.Upload(TestPackages.Whole)));

        Assert.Equal([HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.Created], answers.Select(answer => answer.Status).Order());
        Assert.Equal(1L, await Sql.Scalar(api.Connections.Owner, "SELECT count(*) FROM lab.reduction"));
    }

    [Fact]
    public async Task Upload_DifferentPackagesOfOneTestAtOnce_StoresOneAndRefusesTheOther()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);

        var answers = await Task.WhenAll(lab.Upload(TestPackages.Whole), lab.Upload(TestPackages.Reworded(TestPackages.Whole)));

        Assert.Equal([HttpStatusCode.Created, HttpStatusCode.Conflict], answers.Select(answer => answer.Status).Order());
        Assert.Equal(1L, await Sql.Scalar(api.Connections.Owner, "SELECT count(*) FROM lab.package"));
    }

    [Fact]
    public async Task Upload_TwoRunsOfOneNewVehicleAtOnce_StoresBoth()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);

        var answers = await Task.WhenAll(lab.Upload(TestPackages.Zip(5)), lab.Upload(TestPackages.Zip(6)));

        Assert.All(answers, answer => Assert.Equal(HttpStatusCode.Created, answer.Status));
        Assert.Equal(1L, await Sql.Scalar(api.Connections.Owner, "SELECT count(*) FROM lab.vehicle"));
    }
}
