using System.Text.Json;

namespace Toepan.Domain.Tests.Measures.Injury;

/// <summary>scipy's and numpy's answers on seeded random signals and loads (tests/reference/make_injury.py, injury.json), and the same signals made again bit for bit.</summary>
internal static class InjuryReference
{
    private static readonly Lazy<JsonDocument> Document = new(() =>
        JsonDocument.Parse(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "reference", "injury.json"))));

    /// <summary>Three signals and what was found in them.</summary>
    internal sealed record Case(double RateHz, double[] X, double[] Y, double[] Z, JsonElement Found)
    {
        public double Of(string name) => Found.GetProperty(name).GetDouble();

        /// <summary>HIC with the samples of its window.</summary>
        public (double Value, int First, int Last) Window(string name)
        {
            var parts = Found.GetProperty(name);
            return (parts[0].GetDouble(), parts[1].GetInt32(), parts[2].GetInt32());
        }
    }

    /// <summary>Loads of one risk function and their risks.</summary>
    internal sealed record Curve(string Name, string Dummy, double[] Loads, double[] Risks);

    public static IReadOnlyList<Case> Cases { get; } = [.. Document.Value.RootElement.GetProperty("cases").EnumerateArray().Select(Make)];

    public static IEnumerable<Curve> Curves()
    {
        foreach (var property in Document.Value.RootElement.GetProperty("risks").EnumerateObject())
        {
            var risks = property.Value.GetProperty("risks").EnumerateArray().Select(risk => risk.GetDouble()).ToArray();
            var greatest = property.Value.GetProperty("greatest").GetDouble();
            var loads = Draws(property.Value.GetProperty("seed").GetUInt32(), risks.Length).Select(draw => (draw + 0.5) * greatest).ToArray();
            Xunit.Assert.Equal(property.Value.GetProperty("last").GetDouble(), loads[^1]);
            yield return new(property.Name.Split(' ')[0], property.Name.Split(' ')[1], loads, risks);
        }
    }

    private static Case Make(JsonElement found)
    {
        var (seed, count) = (found.GetProperty("seed").GetUInt32(), found.GetProperty("count").GetInt32());
        var made = new Case(found.GetProperty("rate").GetDouble(), Signal(3 * seed, count), Signal((3 * seed) + 1, count), Signal((3 * seed) + 2, count), found);
        Xunit.Assert.Equal(found.GetProperty("last").GetDouble(), made.Z[^1]);
        return made;
    }

    private static double[] Signal(uint seed, int count)
    {
        var head = Draws(seed, 2);
        var (walkScale, noiseScale) = ((head[0] + 0.5) * 6, (head[1] + 0.5) * 10);
        var numbers = Draws(seed + 1000003, 2 * count);
        var (walk, values) = (0.0, new double[count]);
        for (var i = 0; i < count; i++)
        {
            walk += numbers[2 * i] * walkScale;
            values[i] = walk + (numbers[(2 * i) + 1] * noiseScale);
        }

        return values;
    }

    // Numerical Recipes' 32-bit generator, 24 high bits, as in make_injury.py.
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
