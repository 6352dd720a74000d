using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Pulse;

namespace Toepan.Domain.Measures.Checks;

/// <summary>Peak femur compression left over right, class 600: 0.2 to 5. Outside, one of the two cells is likely dead, reversed or scaled wrongly.</summary>
public sealed class FemurBalance : ICrossCheck
{
    public const string Check = "femur.left-right-ratio";
    private const int FilterClass = 600;
    private const double Lower = 0.2;
    private const double Upper = 5;
    private const string Expectation = "0.2 to 5";

    /// <inheritdoc/>
    public IEnumerable<CrossCheck> Run(CheckContext context)
    {
        foreach (var occupant in context.Occupants)
        {
            var left = ChannelPattern.Dummy(occupant.Position, "FEMRLE00", "FOZ");
            var right = ChannelPattern.Dummy(occupant.Position, "FEMRRI00", "FOZ");
            if (context.Channels.Has(left) && context.Channels.Has(right))
            {
                yield return Compare(occupant.Position, context.Channels.Find(left, FilterClass), context.Channels.Find(right, FilterClass));
            }
        }
    }

    private static CrossCheck Compare(int position, ChannelAnswer left, ChannelAnswer right)
    {
        if ((left.Absent ?? right.Absent) is { } absent)
        {
            return CrossChecks.NotCheckable(Check, position, string.Empty, Expectation, absent);
        }

        var (a, b) = (Compression(left.Channel!), Compression(right.Channel!));
        var note = $"Left {Wording.Figure(a)} kN, right {Wording.Figure(b)} kN.";
        return b > 0
            ? CrossChecks.Judge(Check, position, a / b, string.Empty, Expectation, a / b is >= Lower and <= Upper, note)
            : new(Check, position, null, string.Empty, Expectation, false, note);
    }

    private static double Compression(ReducedChannel channel)
    {
        var samples = channel.History.Values.Span;
        return Math.Max(-samples[Peak.LowestIndex(samples)], 0);
    }
}
