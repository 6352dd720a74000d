using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Pulse;
using static Toepan.Domain.Channels.Wording;

namespace Toepan.Domain.Measures.Checks;

/// <summary>
/// Velocity change of the left less that of the right pillar (else sill) at 100 ms, class 180, m/s. Yaw explains ω·w, w the distance between the two: with a
/// yaw-rate channel the difference must fit some w of 0.8 to 2.2 m, give or take 0.5 m/s; without one it is not separable from an error of gain.
/// </summary>
public sealed class LeftRightVelocity : ICrossCheck
{
    public const string Check = "vehicle.left-right-velocity";
    private const double AtS = 0.100;
    private const double NarrowestM = 0.8;
    private const double WidestM = 2.2;
    private const double ToleranceMs = 0.5;
    private const string Unit = "m/s";
    private const string Expectation = "left less right at 100 ms explained by the yaw rate over 0.8 to 2.2 m, within 0.5 m/s";
    private static readonly ChannelPattern Yaw = ChannelPattern.Vehicle("VEHC????", "AVZ");

    /// <inheritdoc/>
    public IEnumerable<CrossCheck> Run(CheckContext context)
    {
        var source = context.Channels;
        foreach (var (leftPattern, rightPattern) in VehiclePulse.Pairs.Where(pair => source.Has(pair.Left) && source.Has(pair.Right)).Take(1))
        {
            var left = source.Find(leftPattern, PulseContext.IntegrationClass);
            var right = source.Find(rightPattern, PulseContext.IntegrationClass);
            yield return (left.Absent ?? right.Absent) is { } absent
                ? CrossChecks.NotCheckable(Check, null, Unit, Expectation, absent)
                : Compare(source, left.Channel!, right.Channel!);
        }
    }

    private static CrossCheck Compare(ChannelSource source, ReducedChannel left, ReducedChannel right)
    {
        if (VelocityChange(left) is not { } changeLeft || VelocityChange(right) is not { } changeRight)
        {
            return CrossChecks.NotCheckable(Check, null, Unit, Expectation, "a record ends before 100 ms");
        }

        var difference = changeLeft - changeRight;
        var between = $"{left.Code} and {right.Code}";
        if (source.Find(Yaw, PulseContext.IntegrationClass).Channel is not { } yaw || IndexAt(yaw.History) is not { } at)
        {
            return new(Check, null, Digits.Round12(difference), Unit, Expectation, null, $"{between}: not separable from yaw, no yaw-rate channel can be used.");
        }

        var rate = yaw.History.Values.Span[at];
        var least = Math.Min(rate * NarrowestM, rate * WidestM) - ToleranceMs;
        var most = Math.Max(rate * NarrowestM, rate * WidestM) + ToleranceMs;
        return CrossChecks.Judge(
            Check, null, difference, Unit, Expectation, difference >= least && difference <= most,
            $"{between}: a yaw rate of {Figure(rate)} rad/s explains {Figure(least)} to {Figure(most)} m/s.");
    }

    private static double? VelocityChange(ReducedChannel channel) =>
        IndexAt(channel.History) is { } at
            ? Integral.Cumulative(channel.History.Values.Span[..(at + 1)], channel.History.IntervalS)[at] * WorkingUnits.StandardGravity
            : null;

    private static int? IndexAt(TimeHistory history)
    {
        var range = SampleGrid.Between(history, AtS, double.PositiveInfinity);
        return range.Count > 0 ? range.First : null;
    }
}
