using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Pulse;

namespace Toepan.Domain.Measures.Checks;

/// <summary>Largest velocity loss of the pelvis in x over the impact speed, class 180: 0.8 to 1.3. The occupant ends with the vehicle's speed, give or take the rebound.</summary>
public sealed class PelvisVelocity : ICrossCheck
{
    public const string Check = "pelvis.velocity-change";
    private const double Lower = 0.8;
    private const double Upper = 1.3;
    private const string Expectation = "0.8 to 1.3 of the impact speed";

    /// <inheritdoc/>
    public IEnumerable<CrossCheck> Run(CheckContext context)
    {
        foreach (var occupant in context.Occupants)
        {
            var pattern = ChannelPattern.Dummy(occupant.Position, "PELV0000", "ACX");
            if (!context.Channels.Has(pattern))
            {
                continue;
            }

            var answer = context.Channels.Find(pattern, PulseContext.IntegrationClass);
            var reason = answer.Absent ?? (context.Pulse.SpeedMs is > 0 ? null : "no impact speed recorded");
            yield return reason is null
                ? Judge(occupant.Position, answer.Channel!, context.Pulse.SpeedMs!.Value)
                : CrossChecks.NotCheckable(Check, occupant.Position, string.Empty, Expectation, reason);
        }
    }

    private static CrossCheck Judge(int position, ReducedChannel pelvis, double impactSpeedMs)
    {
        var change = Integral.Cumulative(pelvis.History.Values.Span, pelvis.History.IntervalS);
        var ratio = -change[Peak.LowestIndex(change)] * WorkingUnits.StandardGravity / impactSpeedMs;
        return CrossChecks.Judge(Check, position, ratio, string.Empty, Expectation, ratio is >= Lower and <= Upper, $"{pelvis.Code}: velocity lost over the impact speed.");
    }
}
