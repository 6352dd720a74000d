using Toepan.Domain.Measures;

namespace Toepan.Domain.Analysis.Holds;

/// <summary>
/// Where a region's risk would lie in nine of ten repeated runs: its value with every load at the 5 % and at the 95 % point of its scatter, all loads of the
/// region rising together, which makes the range wide rather than narrow. A load whose scatter is not known stays as it is.
/// </summary>
public sealed record RiskRange(string Region, int? Position, double From, double To)
{
    private const double Tail = 0.05;

    /// <summary>The ranges of the regions that are rated on a risk and whose loads' scatter is known in part at least.</summary>
    public static IReadOnlyList<RiskRange> Of(LevelModel model)
    {
        var (low, high) = (At(model, StandardNormal.Quantile(Tail)), At(model, StandardNormal.Quantile(1 - Tail)));
        return
        [
            .. model.Regions.Select((region, i) => (region, Low: low[i], High: high[i]))
                .Where(pair => pair is { Low: not null, High: not null } && pair.Low < pair.High)
                .Select(pair => new RiskRange(pair.region.Region, pair.region.Position, Digits.Round12(pair.Low!.Value), Digits.Round12(pair.High!.Value))),
        ];
    }

    private static IReadOnlyList<double?> At(LevelModel model, double z) => model.RisksAt([.. model.Inputs.Select(input => input.At(z))]);
}
