using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;

namespace Toepan.Web.Pages.Channels.Plots;

/// <summary>The path of the neck through the plane of axial force and condyle moment.</summary>
/// <param name="ForceKn">Axial force, kN, tension positive.</param>
/// <param name="MomentNm">Moment at the condyle, N·m, flexion positive.</param>
public sealed record NeckPath(IReadOnlyList<double> ForceKn, IReadOnlyList<double> MomentNm)
{
    private const int Cfc = 600;

    /// <summary>Null where one of the three channels cannot be used.</summary>
    public static async Task<NeckPath?> Of(Occupant occupant, RunMeasures measures, PlotSignals signals)
    {
        var codes = PlotLines.Channels(measures.At("neck.nij", occupant.Position));
        var channels = await signals.Get(codes, Cfc);
        ReducedChannel? Component(string name) => channels.FirstOrDefault(channel => PlotLines.Component(channel.Code) == name);
        if (Component("FOZ") is not { } axial || Component("FOX") is not { } shear || Component("MOY") is not { } moment
            || Resultant.Disagreement([axial, shear, moment]) is not null)
        {
            return null;
        }

        var count = Math.Min(axial.History.Count, Math.Min(shear.History.Count, moment.History.Count));
        var offsetM = DummyConstants.Of(occupant.Dummy).CondyleOffsetM;
        return new NeckPath(
            axial.History.Values[..count].ToArray(),
            CondyleMoment.Of(moment.History.Values.Span[..count], shear.History.Values.Span[..count], offsetM));
    }
}
