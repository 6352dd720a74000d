using Toepan.Domain.Programme;

namespace Toepan.Domain.Channels;

/// <summary>The sign a procedure expects of a channel's main peak.</summary>
public sealed class ExpectedPeaks
{
    private readonly List<(ChannelPattern Pattern, int Sign)> expectations = [];

    public ExpectedPeaks(IReadOnlyList<Occupant> occupants, IReadOnlyList<ProcedureChannel> channels)
    {
        foreach (var channel in channels.Where(channel => channel.ExpectedPeak is not null))
        {
            var patterns = channel.PerOccupant
                ? occupants.Select(occupant => ChannelPattern.Dummy(occupant.Position, channel.Location, channel.Component))
                : [ChannelPattern.Vehicle(channel.Location, channel.Component)];
            expectations.AddRange(patterns.Select(pattern => (pattern, channel.ExpectedPeak!.Value)));
        }
    }

    /// <summary>+1, −1, or null where the procedure names none.</summary>
    public int? Of(string code)
    {
        foreach (var (pattern, sign) in expectations)
        {
            if (pattern.Matches(code))
            {
                return sign;
            }
        }

        return null;
    }
}
