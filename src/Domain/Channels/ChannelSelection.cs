namespace Toepan.Domain.Channels;

/// <summary>
/// Which channel answers a pattern. Of several that differ only in the filter letter: the unfiltered one, else the highest class,
/// else the lowest number. Where a pattern leaves more open than the letter, the transducer with the lowest number is meant.
/// The choice looks at no quality: a chosen channel that is unfit stays chosen.
/// </summary>
public static class ChannelSelection
{
    public static PreparedChannel? Select(IEnumerable<PreparedChannel> channels, ChannelPattern pattern) => channels
        .Where(channel => channel.Code is { } code && pattern.Matches(code.Text))
        .GroupBy(channel => channel.Code!.Transducer)
        .MinBy(group => group.Min(channel => channel.Recorded.Number))?
        .OrderBy(channel => FilterClasses.Preference(channel.RecordedClass))
        .ThenBy(channel => channel.Recorded.Number)
        .First();
}
