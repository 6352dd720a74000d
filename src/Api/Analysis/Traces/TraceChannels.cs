using Microsoft.EntityFrameworkCore;
using Toepan.Api.Channels.Tables;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Packages;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Traces;
using Toepan.Domain.Channels;
using Toepan.Domain.Measures;

namespace Toepan.Api.Analysis.Traces;

/// <summary>The channels that some traces need, of the current package of each run, under the flags of its current reduction.</summary>
internal sealed class TraceChannels(ProgrammeDb context, TraceCache cache)
{
    private readonly Dictionary<ChannelTrace, TraceAnswer> answers = [];

    /// <summary>What is current for every run, by test code.</summary>
    public Dictionary<string, CurrentRun> Runs { get; } = new(StringComparer.Ordinal);

    public TraceAnswer Of(ChannelTrace channel) => answers[channel];

    /// <summary>Loads all of them; the refusal where a run is unknown.</summary>
    public async Task<Failure?> Load(IEnumerable<Trace> traces, CancellationToken cancellation)
    {
        foreach (var run in traces.SelectMany(trace => trace.Expression.Channels).Distinct().GroupBy(channel => channel.Test))
        {
            if (await CurrentRun.Find(context, run.Key, cancellation) is not { } current)
            {
                return Failure.NotFound("test", run.Key);
            }

            Runs[run.Key] = current;
            await Load(current, [.. run], cancellation);
        }

        return null;
    }

    private async Task Load(CurrentRun run, IReadOnlyList<ChannelTrace> channels, CancellationToken cancellation)
    {
        var missing = channels.Where(channel => !Remembered(run, channel)).ToList();
        if (missing.Count == 0)
        {
            return;
        }

        var codes = missing.Select(channel => channel.Code).Distinct().ToList();
        var rows = await context.Set<ChannelRow>().AsNoTracking()
            .Where(row => row.PackageSha256 == run.PackageSha256 && codes.Contains(row.Code))
            .OrderBy(row => row.Number).ThenBy(row => row.Ordinal).ToListAsync(cancellation);
        var flags = StoredJson.Read<ChannelFlag[]>(await context.Set<ReductionRow>()
            .Where(reduction => reduction.Id == run.ReductionId).Select(reduction => reduction.Flags).SingleAsync(cancellation));
        var prepared = rows.DistinctBy(row => row.Code).ToDictionary(row => row.Code, row => ChannelPreparer.Prepare(row.ToChannel(), flags, null));
        foreach (var channel in missing)
        {
            var answer = prepared.TryGetValue(channel.Code, out var found)
                ? View(found, channel)
                : new TraceAnswer(null, $"{run.Test} has no channel {channel.Code}");
            answers[channel] = answer;
            cache.Keep(Key(run, channel), answer);
        }
    }

    private bool Remembered(CurrentRun run, ChannelTrace channel)
    {
        if (cache.Find(Key(run, channel)) is not { } kept)
        {
            return false;
        }

        answers[channel] = kept;
        return true;
    }

    private static TraceAnswer View(PreparedChannel channel, ChannelTrace wanted)
    {
        var view = ChannelView.Of(channel, wanted.FilterClass);
        return view.History is { } history ? new(new TraceSignal(history, view.Unit), null) : new(null, view.Absent);
    }

    private static TraceKey Key(CurrentRun run, ChannelTrace channel) => new(run.ReductionId, channel.Code, channel.FilterClass);
}
