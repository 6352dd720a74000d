using Toepan.Api.Channels;
using Toepan.Api.Security;
using Toepan.Domain.Channels;

namespace Toepan.Web.Pages.Channels.Plots;

/// <summary>Filtered channels of one run for drawing, from contact to <see cref="EndS"/>; each is asked for once.</summary>
public sealed class PlotSignals(ChannelService channels, Viewer viewer, string test, CancellationToken cancellation)
{
    /// <summary>Where plots end; the crash is over well before.</summary>
    public const double EndS = 0.200;

    private readonly Dictionary<(string Code, int Cfc), ReducedChannel?> _known = [];

    /// <summary>The channels of these codes at a class, in the order given; empty where one of them cannot be given.</summary>
    public async Task<IReadOnlyList<ReducedChannel>> Get(IEnumerable<string> codes, int cfc)
    {
        var found = new List<ReducedChannel>();
        foreach (var code in codes)
        {
            if (await One(code, cfc) is not { } channel)
            {
                return [];
            }

            found.Add(channel);
        }

        return found;
    }

    private async Task<ReducedChannel?> One(string code, int cfc)
    {
        if (!_known.TryGetValue((code, cfc), out var channel))
        {
            var outcome = await channels.Samples(viewer, test, code, new SampleQuery(cfc, 0, EndS), cancellation);
            channel = outcome.Value is { Count: > 1 } samples ? Reduced(samples) : null;
            _known[(code, cfc)] = channel;
        }

        return channel;
    }

    private static ReducedChannel Reduced(ChannelSamples samples) => new()
    {
        Code = samples.Code,
        Unit = samples.Unit,
        FilterClass = samples.Cfc,
        History = new TimeHistory(samples.FromS, samples.IntervalS, samples.Values.ToArray()),
        Bias = samples.BiasRemoved,
        RecordStartS = samples.StartS,
    };
}
