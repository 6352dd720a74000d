using System.Text.Json;

namespace Toepan.Domain.Tests.Channels;

/// <summary>scipy's answers on seeded random signals (tests/reference/make_channels.py, channels.json), and the same signals made again bit for bit.</summary>
internal static class ChannelReference
{
    private static readonly Lazy<JsonDocument> Document = new(() =>
        JsonDocument.Parse(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "reference", "channels.json"))));

    internal sealed record Case(uint Seed, double RateHz, double[] Signal, JsonElement Outputs)
    {
        public int[] Kept { get; } = new[] { 0, 1, 2, Signal.Length - 3, Signal.Length - 2, Signal.Length - 1 }
            .Concat(Enumerable.Range(1, 7).Select(k => Signal.Length * k / 8)).Distinct().Order().ToArray();

        /// <summary>Largest deviation from scipy at the kept samples, relative to the output's largest magnitude.</summary>
        public double Deviation(string output, double[] ours)
        {
            var element = Outputs.GetProperty(output);
            var expected = element.GetProperty("values").EnumerateArray().Select(value => value.GetDouble()).ToArray();
            Xunit.Assert.Equal(expected.Length, Kept.Length);
            return Kept.Select((at, k) => Math.Abs(ours[at] - expected[k])).Max() / element.GetProperty("scale").GetDouble();
        }
    }

    public static IEnumerable<Case> Cases()
    {
        foreach (var element in Document.Value.RootElement.GetProperty("cases").EnumerateArray())
        {
            var made = new Case(element.GetProperty("seed").GetUInt32(), element.GetProperty("rate").GetDouble(), Make(element), element);
            Xunit.Assert.Equal(element.GetProperty("last").GetDouble(), made.Signal[^1]);
            yield return made;
        }
    }

    private static double[] Make(JsonElement element)
    {
        var seed = element.GetProperty("seed").GetUInt32();
        var head = Draws(seed, 4);
        var (offset, walkScale, noiseScale) = (head[1] * 20, (head[2] + 0.5) * 4, (head[3] + 0.5) * 10);
        var count = element.GetProperty("count").GetInt32();
        var numbers = Draws(seed + 1000003, 2 * count);
        var (walk, values) = (0.0, new double[count]);
        for (var i = 0; i < count; i++)
        {
            walk += numbers[2 * i] * walkScale;
            values[i] = offset + walk + (numbers[(2 * i) + 1] * noiseScale);
        }

        return values;
    }

    // Numerical Recipes' 32-bit generator, 24 high bits, as in make_channels.py.
    private static double[] Draws(uint seed, int count)
    {
        var draws = new double[count];
        var state = seed;
        for (var i = 0; i < count; i++)
        {
            state = unchecked((1664525u * state) + 1013904223u);
            draws[i] = ((state >> 8) / 16777216.0) - 0.5;
        }

        return draws;
    }
}
