using Toepan.Domain.Channels;
using Toepan.Domain.Programme;
using Toepan.Web.Charts;
using Toepan.Web.Components;

namespace Toepan.Web.Pages.Channels.Plots;

/// <summary>The time plots of one occupant: head resultant with its HIC window, chest deflection, thigh forces.</summary>
public static class OccupantPlots
{
    public static async Task<IReadOnlyList<PlotModel>> Build(Occupant occupant, RunMeasures measures, PlotSignals signals, UnitSystem units)
    {
        var position = occupant.Position;
        PlotModel?[] plots =
        [
            await Head(position, measures, signals, units),
            await Chest(position, measures, signals, units),
            await Thighs(position, measures, signals, units),
        ];
        return [.. plots.OfType<PlotModel>()];
    }

    private static async Task<PlotModel?> Head(int position, RunMeasures measures, PlotSignals signals, UnitSystem units)
    {
        var hic = measures.At("head.hic15", position);
        var components = await signals.Get(PlotLines.Channels(hic), 1000);
        if (components.Count == 0 || Resultant.Of(components).History is not { } resultant)
        {
            return null;
        }

        return new PlotModel
        {
            Title = "Head acceleration, resultant",
            YLabel = "g",
            Series = [PlotLines.Of("resultant", resultant, Tone.Navy)],
            Bands = hic is { Value: { } value, FromS: { } from, ToS: { } to } ? [new(from * 1000, to * 1000, $"HIC15 {RunMeasures.Text(value, "", units)}")] : [],
            Says = $"HIC15 {measures.Say("head.hic15", position, units)}; exceeded for 3 ms {measures.Say("head.a3ms", position, units)}; peak {measures.Say("head.peak", position, units)}.",
            XRange = PlotLines.WholeMs,
        };
    }

    private static async Task<PlotModel?> Chest(int position, RunMeasures measures, PlotSignals signals, UnitSystem units)
    {
        var deflection = measures.At("chest.deflection", position);
        var channels = await signals.Get(PlotLines.Channels(deflection), deflection?.FilterClass ?? 180);
        return channels.Count == 0 ? null : new PlotModel
        {
            Title = "Chest deflection",
            YLabel = DisplayUnits.Show(1, "mm", units).Unit,
            Series = [PlotLines.Of("inward", channels[0].History, Tone.Teal, -DisplayUnits.Factor("mm", units))],
            Says = $"Greatest {measures.Say("chest.deflection", position, units)}; viscous criterion {measures.Say("chest.viscous", position, units)}.",
            XRange = PlotLines.WholeMs,
        };
    }

    private static async Task<PlotModel?> Thighs(int position, RunMeasures measures, PlotSignals signals, UnitSystem units)
    {
        var series = new List<Series>();
        foreach (var (side, tone) in new[] { ("left", Tone.Navy), ("right", Tone.Teal) })
        {
            var channels = await signals.Get(PlotLines.Channels(measures.At($"femur.{side}.compression", position)), 600);
            if (channels.Count > 0)
            {
                series.Add(PlotLines.Of(side, channels[0].History, tone, -DisplayUnits.Factor("kN", units)));
            }
        }

        return series.Count == 0 ? null : new PlotModel
        {
            Title = "Thigh force",
            YLabel = $"{DisplayUnits.Show(1, "kN", units).Unit}, compression up",
            Series = series,
            Says = $"Compression left {measures.Say("femur.left.compression", position, units)}, right {measures.Say("femur.right.compression", position, units)}.",
            XRange = PlotLines.WholeMs,
        };
    }
}
