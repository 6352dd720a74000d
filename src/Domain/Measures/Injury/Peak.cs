using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Injury;

/// <summary>The largest sample of a history and its instant: the earliest on a tie, none where nothing is above zero.</summary>
internal static class Peak
{
    public static Reading? Of(TimeHistory history)
    {
        if (history.Count == 0)
        {
            return null;
        }

        var values = history.Values.Span;
        var at = 0;
        for (var i = 1; i < values.Length; i++)
        {
            if (values[i] > values[at])
            {
                at = i;
            }
        }

        var instant = values[at] > 0 ? history.TimeAt(at) : (double?)null;
        return new(values[at], instant, instant);
    }
}
