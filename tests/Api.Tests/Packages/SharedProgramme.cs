using System.Net;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages;

/// <summary>
/// One service with a small programme in it, for tests that only read: vans FO-0001 (two occupants), 0002, 0003, 0005 (not valid), its repeat
/// 0006, 0008 (a dead femur channel), and the pickup 0023 (a fire).
/// </summary>
public sealed class SharedProgramme(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly int[] Runs = [5, 6, 1, 2, 3, 8, 23];

    public ApiHost Api { get; private set; } = null!;

    /// <summary>A machine that may read and upload; no test changes its headers.</summary>
    public HttpClient Lab { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Api = await ApiHost.Start(postgres);
        Lab = await Api.Machine(Role.Engineer);
        foreach (var number in Runs)
        {
            Assert.Equal(HttpStatusCode.Created, (await Lab.Upload(TestPackages.Zip(number))).Status);
        }
    }

    public async ValueTask DisposeAsync()
    {
        Lab.Dispose();
        await Api.DisposeAsync();
    }

    /// <summary>A client that asks for a form.</summary>
    public async Task<HttpClient> Accepting(string accept)
    {
        var client = await Api.Machine(Role.Analyst);
        client.DefaultRequestHeaders.TryAddWithoutValidation("Accept", accept);
        return client;
    }
}

/// <summary>Classes that read the shared programme.</summary>
[CollectionDefinition(Name)]
public sealed class ProgrammeReaders : ICollectionFixture<SharedProgramme>
{
    public const string Name = "reads the shared programme";
}
