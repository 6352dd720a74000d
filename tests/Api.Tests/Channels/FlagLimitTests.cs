using System.Net;
using Toepan.Api.Tests.Packages;

namespace Toepan.Api.Tests.Channels;

[Collection(ProgrammeReaders.Name)]
public sealed class FlagLimitTests(SharedProgramme programme)
{
    [Theory]
    [InlineData("""{"channel":"11HEAD0000H3ACXP","kind":"melted","reason":"r"}""")]
    [InlineData("""{"channel":"11HEAD0000H3ACXP","kind":"unfit"}""")]
    [InlineData("""{"channel":"11HEAD0000H3ACXP","kind":"unfit","reason":"  "}""")]
    [InlineData("""{"channel":"11HEAD0000H3ACXP","kind":"unfit","reason":"a\u0000b"}""")]
    [InlineData("""{"channel":"11HEAD0000H3ACXP","kind":"scale","reason":"r"}""")]
    [InlineData("""{"channel":"11HEAD0000H3ACXP","kind":"scale","factor":0,"reason":"r"}""")]
    [InlineData("""{"channel":"11HEAD0000H3ACXP","kind":"polarity","factor":3,"reason":"r"}""")]
    [InlineData("""{"channel":"11HEAD0000H3ACXP","kind":"polarity","from":0.1,"reason":"r"}""")]
    [InlineData("""{"channel":"99NONE0000H3ACXP","kind":"unfit","reason":"r"}""")]
    [InlineData("""{"kind":"unfit","reason":"r"}""")]
    [InlineData("""{"channel":""")]
    public async Task Add_Nonsense_IsABadRequestAndStoresNothing(string body)
    {
        var before = await LabTables.Rows(programme.Api);
        using var content = new StringContent(body, System.Text.Encoding.UTF8, "application/json");

        using var response = await programme.Lab.PostAsync("/api/v1/tests/FO-0002/flags", content, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
        Assert.Equal(before, await LabTables.Rows(programme.Api));
    }
}
