namespace Toepan.Domain.Channels;

/// <summary>The vector sum of components, or the reason there is none.</summary>
public sealed record ResultantAnswer(TimeHistory? History, string? Absent);

/// <summary>√(Σ xₖ²) of components on their common samples. Components must share interval and start of record, else there is none.</summary>
public static class Resultant
{
    /// <summary>
    /// The resultant of filtered components of one unit, over the samples all of them have (the shortest decides). The sum runs in
    /// the order given.
    /// </summary>
    public static ResultantAnswer Of(IReadOnlyList<ReducedChannel> components)
    {
        ArgumentOutOfRangeException.ThrowIfZero(components.Count);
        if (Disagreement(components) is { } reason)
        {
            return new(null, reason);
        }

        var count = components.Min(component => component.History.Count);
        var values = new double[count];
        foreach (var component in components)
        {
            var samples = component.History.Values.Span;
            for (var i = 0; i < count; i++)
            {
                values[i] += samples[i] * samples[i];
            }
        }

        for (var i = 0; i < count; i++)
        {
            values[i] = Math.Sqrt(values[i]);
        }

        var first = components[0].History;
        return new(new TimeHistory(first.StartS, first.IntervalS, values), null);
    }

    /// <summary>Why channels cannot be combined sample by sample (interval or start of record differ by more than 1e-6 of an interval), or null.</summary>
    public static string? Disagreement(IReadOnlyList<ReducedChannel> channels)
    {
        var first = channels[0];
        foreach (var other in channels.Skip(1))
        {
            var interval = first.History.IntervalS;
            if (Math.Abs(other.History.IntervalS - interval) > SampleGrid.Tolerance * interval)
            {
                return $"{first.Code} and {other.Code} are sampled {Wording.Figure(interval)} s and {Wording.Figure(other.History.IntervalS)} s apart";
            }

            if (Math.Abs(other.RecordStartS - first.RecordStartS) > SampleGrid.Tolerance * interval)
            {
                return $"{first.Code} and {other.Code} start at {Wording.Figure(first.RecordStartS)} s and {Wording.Figure(other.RecordStartS)} s";
            }
        }

        return null;
    }
}
