using Toepan.Domain.Channels;
using Toepan.Domain.Measures;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Holds;

/// <summary>
/// How far each figure of a run would have to move, alone, to change the overall level: exact, by bisection on the rating to the last bit. A rating never
/// gets better as a figure rises, so there is at most one such place on each side. Loads are sought down to zero.
/// </summary>
public sealed class Sensitivity
{
    private readonly LevelModel model;
    private readonly double[] figures;
    private readonly ProtectionLevel overall;

    private Sensitivity(LevelModel model, ProtectionLevel overall)
    {
        (this.model, this.overall) = (model, overall);
        figures = [.. model.Values];
    }

    /// <param name="speedKmh">Impact speed; null where none was recorded.</param>
    /// <param name="nominalKmh">Nominal speed of the procedure.</param>
    public static SensitivityReport Of(LevelModel model, double? speedKmh, double nominalKmh)
    {
        if (model.Overall([.. model.Values]) is not { } overall)
        {
            return new(null, model.NotRated, [], [], null);
        }

        var search = new Sensitivity(model, overall);
        var rows = model.Inputs.Select((input, index) => search.Row(input, index)).ToList();
        var moving = rows.Where(row => row.ToWorse is not null || row.ToBetter is not null)
            .OrderByDescending(row => row.ChanceAlone ?? -1)
            .ThenBy(Nearest)
            .ToList();
        return new(
            overall, null, moving, [.. rows.Except(moving).Select(row => row.Input.Code).Distinct()],
            speedKmh is { } speed ? search.Explain(speed, nominalKmh) : null);
    }

    private static double Nearest(SensitivityRow row) => Math.Min(Size(row.ToWorse), Size(row.ToBetter));

    private static double Size(LevelMove? move) => move is null ? double.PositiveInfinity : Math.Abs(move.Deviates ?? move.Share ?? double.MaxValue);

    private SensitivityRow Row(LevelInput input, int index)
    {
        var worse = Change(index, input.Value, input.IsRisk ? 1 : ChannelPreparer.LargestReading, level => level > overall);
        var better = Change(index, input.Value, Math.Min(0, input.Value), level => level < overall);
        double? chance = input.Scatter is not { } scatter ? null
            : (worse is { } up ? scatter.ChanceAbove(input.Value, up) : 0) + (better is { } down ? 1 - scatter.ChanceAbove(input.Value, down) : 0);
        return new(input, Move(index, input, worse, 1), Move(index, input, better, -1), Digits.Round12(chance));
    }

    /// <summary>The last value on the way from the run's own to another at which the level has not changed; null where it does not even there.</summary>
    private double? Change(int index, double from, double to, Func<ProtectionLevel, bool> changed)
    {
        if (from == to || !changed(At(index, to)))
        {
            return null;
        }

        return Bisect(from, to, value => changed(At(index, value)));
    }

    private static double Bisect(double same, double changed, Func<double, bool> hasChanged)
    {
        while (true)
        {
            var middle = same + ((changed - same) / 2);
            if (middle == same || middle == changed)
            {
                return Digits.Round12(same);
            }

            (same, changed) = hasChanged(middle) ? (same, middle) : (middle, changed);
        }
    }

    private ProtectionLevel At(int index, double value)
    {
        var own = figures[index];
        figures[index] = value;
        var level = model.Overall(figures)!.Value;
        figures[index] = own;
        return level;
    }

    private LevelMove? Move(int index, LevelInput input, double? to, int direction)
    {
        if (to is not { } bound)
        {
            return null;
        }

        var beyond = bound + (direction * Math.Max(Math.Abs(bound), double.Epsilon) * 1e-9);
        var change = Digits.Round12(bound - input.Value);
        return new(
            bound, change, input.Value == 0 ? null : Digits.Round12(change / Math.Abs(input.Value)), Digits.Round12(input.Scatter?.Deviates(input.Value, bound)),
            At(index, beyond));
    }

    private SpeedExplanation Explain(double speedKmh, double nominalKmh)
    {
        var ratio = speedKmh / nominalKmh * (speedKmh / nominalKmh);
        var better = Scaled(0) < overall ? Bisect(1, 0, factor => Scaled(factor) < overall) : (double?)null;
        return new(
            Digits.Round12(speedKmh), nominalKmh, Digits.Round12(ratio), Scaled(1 / ratio),
            better is { } factor && factor > 0 ? Digits.Round12(nominalKmh * Math.Sqrt(1 / factor)) : null);
    }

    private ProtectionLevel Scaled(double factor) => model.Overall([.. model.Inputs.Select(input => input.Scaled(factor))])!.Value;
}
