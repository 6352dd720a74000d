using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Injury;

/// <summary>
/// One channel a measure asked for, sample by sample, with what is known where it is not wholly usable. Samples past the reliable
/// end, and all samples of an unusable channel, read 0: of a magnitude that never claims more than the channel shows.
/// </summary>
internal sealed class Component
{
    private readonly double[] values;
    private readonly List<SampleRange> clipped;

    private Component(ChannelAnswer answer)
    {
        Answer = answer;
        values = Usable?.History.Values.ToArray() ?? [];
        clipped = Usable?.Clipped.Select(c => SampleGrid.Between(Usable.History, c.FromS, c.ToS)).Where(r => r.Count > 0).ToList() ?? [];
    }

    public ChannelAnswer Answer { get; }

    /// <summary>The wholly usable channel, or null.</summary>
    public ReducedChannel? Channel => Answer.Channel;

    /// <summary>The channel, or its reliable part, or null.</summary>
    public ReducedChannel? Usable => Answer.Channel ?? Answer.Partial;

    public bool IsClipped => clipped.Count > 0;

    public int Count => values.Length;

    public double this[int index] => index < values.Length ? values[index] : 0;

    /// <summary>Asks for a dummy channel of the context's occupant.</summary>
    public static Component Ask(OccupantContext context, string location, string component, int filterClass) =>
        new(context.Channels.Find(ChannelPattern.Dummy(context.Occupant.Position, location, component), filterClass));

    /// <summary>Whether the package has such a channel at all, fit or not.</summary>
    public static bool Exists(OccupantContext context, string location, string component) =>
        context.Channels.Has(ChannelPattern.Dummy(context.Occupant.Position, location, component));

    /// <summary>Whether the recorded sample is the true one: within the reliable part and not at the transducer's stop.</summary>
    public bool Known(int index) => index < values.Length && !Clipped(index);

    /// <summary>Whether the transducer was at its stop on the side of <paramref name="sign"/> (+1, −1): the true value lies further that way.</summary>
    public bool ClippedTowards(int index, int sign) => Clipped(index) && Math.Sign(this[index]) == sign;

    /// <summary>Whether the true value lies, on the side of <paramref name="sign"/>, no lower than the recorded one.</summary>
    public bool Reaches(int index, int sign) => Known(index) || ClippedTowards(index, sign);

    private bool Clipped(int index)
    {
        foreach (var range in clipped)
        {
            if (index >= range.First && index <= range.Last)
            {
                return true;
            }
        }

        return false;
    }
}
