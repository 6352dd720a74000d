namespace Toepan.Domain.Ratings.Steps;

/// <summary>What a region may still turn out to be: a level, and the range its excess risk then has.</summary>
internal readonly record struct Option(ProtectionLevel Level, double Least, double Most)
{
    // Just above a bound that belongs to the better level.
    private const double Above = 1e-9;

    /// <summary>The levels open to a value between two ends, each with its range.</summary>
    /// <param name="largest">The largest value still at a level.</param>
    /// <param name="excess">Excess risk of a value.</param>
    public static List<Option> Between(double atLeast, double atMost, Func<ProtectionLevel, double> largest, Func<double, double> excess)
    {
        var options = new List<Option>();
        var below = double.NegativeInfinity;
        foreach (var level in Enum.GetValues<ProtectionLevel>())
        {
            var top = largest(level);
            if (below < atMost && top >= atLeast && top > below)
            {
                var least = below >= atLeast ? Math.Min(1, excess(below) + Above) : excess(atLeast);
                options.Add(new(level, least, Math.Max(least, excess(Math.Min(top, atMost)))));
            }

            below = Math.Max(below, top);
        }

        return options;
    }

    /// <summary>All ways to choose one option from each list: worst level, largest excess; then equal levels with touching ranges in one.</summary>
    public static List<Option> Worst(IEnumerable<List<Option>> lists)
    {
        List<Option> combined = [new(ProtectionLevel.High, 0, 0)];
        foreach (var list in lists)
        {
            combined = Merged([.. combined.SelectMany(a => list.Select(b =>
                new Option(ProtectionLevels.Worse(a.Level, b.Level), Math.Max(a.Least, b.Least), Math.Max(a.Most, b.Most))))]);
        }

        return combined;
    }

    private static List<Option> Merged(List<Option> options)
    {
        var merged = new List<Option>();
        foreach (var option in options.OrderBy(o => o.Level).ThenBy(o => o.Least))
        {
            if (merged.Count > 0 && merged[^1] is var last && last.Level == option.Level && option.Least <= last.Most + (2 * Above))
            {
                merged[^1] = last with { Most = Math.Max(last.Most, option.Most) };
            }
            else
            {
                merged.Add(option);
            }
        }

        return merged;
    }
}
