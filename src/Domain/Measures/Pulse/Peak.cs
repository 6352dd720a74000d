namespace Toepan.Domain.Measures.Pulse;

/// <summary>Where a sampled signal is lowest or highest; the earliest sample on a tie. At least one sample.</summary>
public static class Peak
{
    public static int LowestIndex(ReadOnlySpan<double> values)
    {
        var at = 0;
        for (var i = 1; i < values.Length; i++)
        {
            at = values[i] < values[at] ? i : at;
        }

        return at;
    }

    public static int HighestIndex(ReadOnlySpan<double> values)
    {
        var at = 0;
        for (var i = 1; i < values.Length; i++)
        {
            at = values[i] > values[at] ? i : at;
        }

        return at;
    }
}
