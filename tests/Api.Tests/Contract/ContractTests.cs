using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Security;
using Toepan.Api.Tests.Packages;
using Toepan.Support;

namespace Toepan.Api.Tests.Contract;

/// <summary>What holds for every route of the contract.</summary>
[Collection(ProgrammeReaders.Name)]
public sealed partial class ContractTests(SharedProgramme programme)
{
    [Fact]
    public async Task OpenApi_EveryRoute_HasNameSummaryDescriptionAndResponses()
    {
        var lab = programme.Lab;

        var paths = (await lab.Read("/openapi/v1.json")).Json.GetProperty("paths");

        var lacking = Operations(paths).Where(operation => !IsDescribed(operation.Value)).Select(operation => operation.Name);
        Assert.Empty(lacking);
        var described = Operations(paths).Select(operation => operation.Name).ToHashSet();
        Assert.Empty(Mapped(programme.Api).Except(described));
    }

    [Fact]
    public async Task EveryReading_OfSomethingUnknown_IsNotFoundWithProblemDetails()
    {
        using var lab = await programme.Api.Machine(Role.Administrator);
        var wrong = new List<string>();

        foreach (var path in Patterns(programme.Api).Where(pattern => pattern.Method == "GET" && pattern.Path.Contains('{', StringComparison.Ordinal)).Select(pattern => Filled(pattern.Path)))
        {
            var answer = await lab.Read(path);
            if (answer.Status != HttpStatusCode.NotFound || answer.MediaType != "application/problem+json" || answer.Text("detail").Length == 0)
            {
                wrong.Add($"{path}: {answer.Status} {answer.MediaType}");
            }
        }

        Assert.Empty(wrong);
    }

    [Theory]
    [InlineData("/api/v1/tests?state=lost", "lost", "not valid")]
    [InlineData("/api/v1/tests?valid=perhaps", "perhaps", "valid")]
    [InlineData("/api/v1/tests/FO-0001/package?format=tar", "tar", "iso13499")]
    [InlineData("/api/v1/tests/FO-0001/measures?reduction=first", "first", "reduction")]
    public async Task BadQueryValues_AreNamedWithTheirLimits(string path, string value, string limit)
    {
        var lab = programme.Lab;

        var answer = await lab.Read(path);

        Assert.Equal((HttpStatusCode.BadRequest, "application/problem+json"), (answer.Status, answer.MediaType));
        Assert.Contains(value, answer.Text("detail"), StringComparison.Ordinal);
        Assert.Contains(limit, answer.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Schema_OfProgrammeJson_IsServed()
    {
        var lab = programme.Lab;

        var answer = await lab.Read("/schemas/programme.json");

        Assert.Equal("application/schema+json", answer.MediaType);
        Assert.Contains("test", answer.Json.GetProperty("required").EnumerateArray().Select(member => member.GetString()));
    }

    private static bool IsDescribed(JsonElement operation) =>
        Has(operation, "operationId") && Has(operation, "summary") && Has(operation, "description")
        && operation.GetProperty("responses").EnumerateObject().Any(response => response.Name[0] == '2');

    private static bool Has(JsonElement operation, string member) =>
        operation.TryGetProperty(member, out var text) && !string.IsNullOrWhiteSpace(text.GetString());

    private static IEnumerable<(string Name, JsonElement Value)> Operations(JsonElement paths) =>
        from path in paths.EnumerateObject()
        where path.Name.StartsWith("/api/", StringComparison.Ordinal)
        from operation in path.Value.EnumerateObject()
        select ($"{operation.Name.ToUpperInvariant()} {path.Name}", operation.Value);

    private static IEnumerable<string> Mapped(ApiHost api) => Patterns(api)
        .Select(pattern => $"{pattern.Method} {Constraint().Replace(pattern.Path, "")}");

    private static IEnumerable<(string Method, string Path)> Patterns(ApiHost api) =>
        from endpoint in api.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
        where endpoint.RoutePattern.RawText!.StartsWith("/api/", StringComparison.Ordinal)
        from method in endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? []
        select (method, endpoint.RoutePattern.RawText!.TrimEnd('/')); // a group's own route

    private static string Filled(string pattern) => string.Join('/', pattern.Split('/').Select(part => part.StartsWith('{') ? "unknown-7" : part));

    [GeneratedRegex(":[a-z]+(?=})")]
    private static partial Regex Constraint();
}
