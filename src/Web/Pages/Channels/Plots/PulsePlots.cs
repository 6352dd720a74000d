using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Pulse;
using Toepan.Web.Charts;
using Toepan.Web.Components;

namespace Toepan.Web.Pages.Channels.Plots;

/// <summary>The vehicle's pulse: deceleration (CFC 60), velocity and travel (CFC 180).</summary>
public static class PulsePlots
{
    private const int DecelerationClass = 60;
    private const int MotionClass = 180;

    public static async Task<IReadOnlyList<PlotModel>> Build(RunMeasures measures, PlotSignals signals, UnitSystem units)
    {
        var codes = PlotLines.Channels(measures.Vehicle("vehicle.peak") ?? measures.Vehicle("vehicle.deltav"));
        var slow = Mean(await signals.Get(codes, DecelerationClass));
        if (slow is null)
        {
            return [];
        }

        var plots = new List<PlotModel> { Deceleration(slow, measures, units) };
        var motion = Mean(await signals.Get(codes, MotionClass));
        if (motion is not null && measures.Vehicle("conduct.speed")?.Value is { } speedKmh)
        {
            plots.AddRange(Motion(new VehicleMotion(motion, speedKmh / 3.6), measures, units));
        }

        return plots;
    }

    private static PlotModel Deceleration(TimeHistory acceleration, RunMeasures measures, UnitSystem units) => new()
    {
        Title = "Vehicle deceleration",
        YLabel = "g",
        Series = [PlotLines.Of("deceleration", acceleration, Tone.Navy, -1)],
        Marks = measures.Vehicle("vehicle.peak") is { Value: { } peak, FromS: { } at } ? [new(at * 1000, peak, $"{RunMeasures.Text(peak, "g", units)}")] : [],
        Says = $"Filtered at class {DecelerationClass}. Peak {measures.Say("vehicle.peak", null, units)}.",
        XRange = PlotLines.WholeMs,
    };

    private static IEnumerable<PlotModel> Motion(VehicleMotion motion, RunMeasures measures, UnitSystem units)
    {
        var speed = DisplayUnits.Show(1, "km/h", units).Unit;
        var length = DisplayUnits.Show(1, "mm", units).Unit;
        yield return new PlotModel
        {
            Title = "Vehicle velocity",
            YLabel = speed,
            Series = [PlotLines.Of("velocity", motion.Acceleration with { Values = motion.VelocityMs }, Tone.Navy, 3.6 * DisplayUnits.Factor("km/h", units))],
            Says = $"From the impact speed by the integral of the class {MotionClass} acceleration. Change {measures.Say("vehicle.deltav", null, units)}.",
            XRange = PlotLines.WholeMs,
        };
        yield return new PlotModel
        {
            Title = "Vehicle travel",
            YLabel = length,
            Series = [PlotLines.Of("travel", motion.Acceleration with { Values = motion.TravelM }, Tone.Navy, 1000 * DisplayUnits.Factor("mm", units))],
            Says = $"Vehicle and barrier crush together in it. Greatest {measures.Say("vehicle.stroke", null, units)}.",
            XRange = PlotLines.WholeMs,
        };
    }

    /// <summary>One channel, or the mean of a pair; null without any or where they do not fit together.</summary>
    private static TimeHistory? Mean(IReadOnlyList<ReducedChannel> channels)
    {
        if (channels.Count == 0 || Resultant.Disagreement(channels) is not null)
        {
            return null;
        }

        var count = channels.Min(channel => channel.History.Count);
        var values = new double[count];
        for (var i = 0; i < count; i++)
        {
            values[i] = channels.Sum(channel => channel.History.Values.Span[i]) / channels.Count;
        }

        return channels[0].History with { Values = values };
    }
}
