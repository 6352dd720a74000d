namespace Toepan.Api.Channels;

/// <summary>The instant of every sample given, s.</summary>
internal static class SampleTimes
{
    public static double[] Of(ChannelSamples samples)
    {
        var times = new double[samples.Count];
        for (var i = 0; i < times.Length; i++)
        {
            times[i] = samples.Times?[i] ?? Instants.Of(samples.FromS + (i * samples.IntervalS));
        }

        return times;
    }
}
