using Microsoft.EntityFrameworkCore;
using Toepan.Api.Channels;
using Toepan.Api.Channels.Tables;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Channels;
using Toepan.Domain.Measures;

namespace Toepan.Api.Analysis;

/// <summary>One channel of one run, prepared as measures get it.</summary>
internal sealed record ClassChannel(string Test, string Vehicle, ChannelSamples Samples);

/// <summary>The channels of a class, read one at a time while they are sent.</summary>
public sealed class ClassChannels
{
    internal ClassChannels(string vehicleClass, string query, IAsyncEnumerable<ClassChannel> channels) => (Class, Query, Channels) = (vehicleClass, query, channels);

    public string Class { get; }

    /// <summary>The address that asked.</summary>
    public string Query { get; }

    internal IAsyncEnumerable<ClassChannel> Channels { get; }
}

/// <summary>All channels of a class, for bulk download.</summary>
public sealed class ClassChannelService(IDbContextFactory<ProgrammeDb> contexts)
{
    /// <param name="codes">Channel codes; empty = all.</param>
    /// <param name="cfc">Class they are filtered to; null = as recorded.</param>
    public async Task<Outcome<ClassChannels>> Open(
        Viewer viewer, string vehicleClass, IReadOnlyList<string> codes, int? cfc, string query, CancellationToken cancellation = default)
    {
        var samples = new SampleQuery(cfc, null, null, null);
        if ((Access.ToRead(viewer) ?? SampleQueryLimits.Check(samples)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (!await context.Set<VehicleClassRow>().AnyAsync(row => row.Key == vehicleClass, cancellation))
        {
            return Failure.NotFound("vehicle class", vehicleClass);
        }

        var runs = await context.Set<CurrentRatingRow>()
            .Where(row => !context.Set<CurrentRatingRow>().Any(later => later.Test == row.Test && later.Id > row.Id))
            .Join(context.Set<TestRunRow>().Where(run => run.Vehicle!.ClassKey == vehicleClass), row => row.Test, run => run.Test, (row, run) => new CurrentPackage(
                run.Test, run.VehicleKey, row.Rating!.Reduction!.PackageSha256, row.Rating.Reduction.Flags))
            .ToListAsync(cancellation);
        string[] wanted = [.. codes.Select(code => code.ToUpperInvariant())];
        return new ClassChannels(vehicleClass, query, Read([.. runs.OrderBy(run => run.Test, StringComparer.Ordinal)], wanted, samples, cancellation));
    }

    private sealed record CurrentPackage(string Test, string Vehicle, string Sha256, string Flags);

    private async IAsyncEnumerable<ClassChannel> Read(
        List<CurrentPackage> runs, string[] codes, SampleQuery query, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellation);
        foreach (var run in runs)
        {
            var flags = StoredJson.Read<ChannelFlag[]>(run.Flags);
            var rows = context.Set<ChannelRow>().AsNoTracking()
                .Where(row => row.PackageSha256 == run.Sha256 && (codes.Length == 0 || codes.Contains(row.Code)))
                .OrderBy(row => row.Ordinal).AsAsyncEnumerable();
            await foreach (var row in rows.WithCancellation(cancellation))
            {
                if (SampleCut.Of(ChannelPreparer.Prepare(row.ToChannel(), flags, null), query).Value is { Count: > 0 } samples)
                {
                    yield return new(run.Test, run.Vehicle, samples);
                }
            }
        }
    }
}
