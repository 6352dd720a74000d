using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Packages;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Packages;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages;

/// <summary>What is read from the rows is what the reader read from the zip.</summary>
public sealed class PackageArchiveTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Read_StoredPackage_EqualsWhatTheReaderGave()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestPackages.Whole);
        var known = new KnownProgramme(new HashSet<string> { "offset-frontal-64" }, new HashSet<string> { "delivery-van" });
        var read = PackageReader.Read(new MemoryStream(TestPackages.Whole), known, PackageLimits.Default, TestContext.Current.CancellationToken).Package!;

        await using var db = await api.Services.GetRequiredService<IDbContextFactory<ProgrammeDb>>()
            .CreateDbContextAsync(TestContext.Current.CancellationToken);
        var stored = await PackageArchive.Read(db, PackageClient.Sha256(TestPackages.Whole), TestContext.Current.CancellationToken);

        Assert.Equal(read.Channels.Count, stored.Channels.Count);
        Assert.All(read.Channels.Zip(stored.Channels), pair =>
        {
            Assert.Equal(Bits(pair.First), Bits(pair.Second));
            Assert.Equal(Text(pair.First with { Samples = default }), Text(pair.Second with { Samples = default }));
        });
        Assert.Equal(Text(read with { Channels = [] }), Text(stored with { Channels = [] }));
    }

    private static IEnumerable<long> Bits(RecordedChannel channel) => channel.Samples.ToArray().Select(BitConverter.DoubleToInt64Bits);

    private static string Text<T>(T value) => JsonSerializer.Serialize(value);
}
