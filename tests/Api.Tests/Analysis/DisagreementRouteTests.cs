using System.Net;
using Toepan.Api.Tests.Packages;

namespace Toepan.Api.Tests.Analysis;

[Collection(ProgrammeReaders.Name)]
public sealed class DisagreementRouteTests(SharedProgramme programme)
{
    [Fact]
    public async Task Find_EveryClass_CountsItsRuns()
    {
        var classes = (await programme.Lab.Read("/api/v1/disagreements")).Json.EnumerateArray().ToList();

        Assert.Equal(5, classes.Single(row => row.GetProperty("class").GetString() == "delivery-van").GetProperty("runs").GetInt32());
        Assert.All(classes.SelectMany(row => row.GetProperty("disagreements").EnumerateArray()), one => Assert.Equal("film", one.GetProperty("kind").GetString()));
    }

    [Fact]
    public async Task Find_UnknownClass_IsNotFound() => Assert.Equal(HttpStatusCode.NotFound, (await programme.Lab.Read("/api/v1/disagreements?class=none")).Status);
}
