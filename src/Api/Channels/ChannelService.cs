using Microsoft.EntityFrameworkCore;
using Toepan.Api.Channels.Tables;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Packages;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Channels;
using Toepan.Domain.Measures;

namespace Toepan.Api.Channels;

/// <summary>The channels of a run: index and samples.</summary>
public sealed class ChannelService(IDbContextFactory<ProgrammeDb> contexts)
{
    /// <summary>Every channel of the current package, by number.</summary>
    public async Task<Outcome<IReadOnlyList<ChannelIndexEntry>>> Index(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await CurrentRun.Find(context, test, cancellation) is not { } current)
        {
            return Failure.NotFound("test", test);
        }

        var reduction = await CurrentRun.ReadReduction(context, current.ReductionId, cancellation);
        var beliefs = reduction.Channels.ToLookup(belief => (belief.Channel, belief.File));
        var rows = await context.Set<ChannelRow>().AsNoTracking()
            .Where(row => row.PackageSha256 == current.PackageSha256)
            .OrderBy(row => row.Number).ThenBy(row => row.Ordinal)
            .Select(row => new { row.Number, row.Code, row.File, row.Unit, row.FirstSampleS, row.IntervalS, row.Count })
            .ToListAsync(cancellation);
        return Outcome.List<ChannelIndexEntry>(rows.ConvertAll(row =>
        {
            var belief = beliefs[(row.Code, row.File)].FirstOrDefault();
            return new ChannelIndexEntry(
                row.Number, row.Code, row.File, row.Unit, belief?.Unit, row.FirstSampleS, row.IntervalS, row.Count, belief?.RecordedClass,
                belief?.Unfit, belief?.UnfitFromS, belief?.Problems ?? []);
        }));
    }

    /// <summary>Samples of one channel, prepared as measures get them (converted, flags applied, bias removed), filtered where asked.</summary>
    public async Task<Outcome<ChannelSamples>> Samples(
        Viewer viewer, string test, string code, SampleQuery query, CancellationToken cancellation = default)
    {
        if ((Access.ToRead(viewer) ?? SampleQueryLimits.Check(query)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await CurrentRun.Find(context, test, cancellation) is not { } current)
        {
            return Failure.NotFound("test", test);
        }

        var wanted = code.ToUpperInvariant();
        var row = await context.Set<ChannelRow>().AsNoTracking()
            .Where(channel => channel.PackageSha256 == current.PackageSha256 && channel.Code == wanted)
            .OrderBy(channel => channel.Number).ThenBy(channel => channel.Ordinal)
            .FirstOrDefaultAsync(cancellation);
        if (row is null)
        {
            return Failure.NotFound($"channel of test '{test}'", code);
        }

        var flags = await context.Set<ReductionRow>()
            .Where(reduction => reduction.Id == current.ReductionId).Select(reduction => reduction.Flags).SingleAsync(cancellation);
        return SampleCut.Of(ChannelPreparer.Prepare(row.ToChannel(), StoredJson.Read<ChannelFlag[]>(flags), null), query);
    }
}
