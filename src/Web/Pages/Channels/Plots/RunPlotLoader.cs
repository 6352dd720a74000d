using Toepan.Api.Channels;
using Toepan.Api.Security;
using Toepan.Domain.Programme;
using Toepan.Web.Charts;
using Toepan.Web.Components;
using Toepan.Web.Pages.Programme;

namespace Toepan.Web.Pages.Channels.Plots;

/// <summary>The plots of one occupant.</summary>
public sealed record SeatPlots(Occupant Occupant, IReadOnlyList<PlotModel> Plots, NeckPath? Neck);

/// <summary>Everything the plot section draws.</summary>
public sealed record RunPlots(IReadOnlyList<PlotModel> Pulse, IReadOnlyList<SeatPlots> Seats);

/// <summary>Reads the channels behind a run's measures and lays them out for drawing.</summary>
public sealed class RunPlotLoader(ChannelService channels)
{
    public async Task<RunPlots> Load(Viewer viewer, TestRunView view, UnitSystem units, CancellationToken cancellation)
    {
        var measures = new RunMeasures(view.Measures);
        var signals = new PlotSignals(channels, viewer, view.Test, cancellation);
        var seats = new List<SeatPlots>();
        foreach (var occupant in view.Detail.Run.Occupants)
        {
            seats.Add(new SeatPlots(occupant, await OccupantPlots.Build(occupant, measures, signals, units), await NeckPath.Of(occupant, measures, signals)));
        }

        return new RunPlots(await PulsePlots.Build(measures, signals, units), seats);
    }
}
