using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Pulse;

namespace Toepan.Domain.Measures.Checks;

/// <summary>
/// Onset of the vehicle channel, class 180: the last time before the deceleration first reaches 2 g (or its peak, where that is less) at which it passed
/// 0.5 g; −1 to +5 ms from t = 0. The walk back from 2 g keeps noise before contact from counting (our own reading, no source).
/// </summary>
public sealed class PulseOnset : ICrossCheck
{
    public const string Check = "vehicle.onset";
    private const double OnsetG = 0.5;
    private const double SureG = 2;
    private const double EarliestMs = -1;
    private const double LatestMs = 5;
    private const string Unit = "ms";
    private const string Expectation = "0.5 g is passed between -1 and +5 ms";

    /// <inheritdoc/>
    public IEnumerable<CrossCheck> Run(CheckContext context)
    {
        var pulse = context.Pulse.Integration;
        if (pulse.History is null)
        {
            yield return CrossChecks.NotCheckable(Check, null, Unit, Expectation, pulse.Absent!);
            yield break;
        }

        var channel = context.Channels.FindWhole(new ChannelPattern(pulse.Channels[0].Code), PulseContext.IntegrationClass);
        yield return channel is not null && OnsetMs(channel.History) is { } onset
            ? CrossChecks.Judge(Check, null, onset, Unit, Expectation, onset is >= EarliestMs and <= LatestMs, $"{channel.Code}: trigger and pulse against each other.")
            : CrossChecks.NotCheckable(Check, null, Unit, Expectation, "the deceleration never passes 0.5 g");
    }

    /// <summary>Instant of the onset in ms, or null where 0.5 g is never passed.</summary>
    private static double? OnsetMs(TimeHistory history)
    {
        var samples = history.Values.Span;
        var peak = -samples[Peak.LowestIndex(samples)];
        if (peak < OnsetG)
        {
            return null;
        }

        var at = 0;
        while (-samples[at] < Math.Min(SureG, peak))
        {
            at++;
        }

        while (at > 0 && -samples[at - 1] >= OnsetG)
        {
            at--;
        }

        return history.TimeAt(at) * 1000;
    }
}
