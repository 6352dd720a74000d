using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Injury;

/// <summary>Axial force and bending moment of the neck at the same instant, each as a share of what the neck stands, added.</summary>
/// <formula>Nij(t) = |Fz|/Fzc + |My_oc|/Myc, My_oc = My − d·Fx with d = 0.01778 m. Intercepts (H3 / HF): tension 6806 / 4287 N, compression 6160 / 3880 N, flexion 310 / 155 N·m, extension 135 / 67 N·m. The signs of force and moment pick one of four modes at each instant; the largest over time and modes counts.</formula>
/// <window>The instant of the peak, the earliest on a tie. The mode is kept with the value: tension or compression, with flexion or extension.</window>
/// <edges>At exactly zero force: tension; at exactly zero moment: flexion (the regulation leaves it open). All inputs at class 600, so Fz here is not the Fz of neck.tension. Absent where one of the three channels is absent or unfit. Either term alone is a lower bound where the other's channels are missing; clipping gives a lower bound.</edges>
/// <sources>[fmvss208] S6.6, S15.3.6 (in-position intercepts); offset [part572] 572.133(b)(1)(ii).</sources>
/// <confidence>C1; convention at zero: common practice, no source.</confidence>
/// <checks>The six neck cases and the sine history of the check cases, both dummies.</checks>
public sealed class NeckNij : IOccupantMeasure
{
    private const int FilterClass = 600;

    public IEnumerable<Measure> Reduce(OccupantContext context)
    {
        var constants = DummyConstants.Of(context.Occupant.Dummy);
        var force = Component.Ask(context, UpperNeck.Location, "FOZ", FilterClass);
        var neck = new UpperNeck(context, FilterClass);
        var trace = new Trace(
            i => Axial(force[i], constants) + Bending(neck.Moment(i), constants),
            i => Axial(force[i], constants) + Math.Max(Bending(neck.AtLeast(i, +1), constants), Bending(-neck.AtLeast(i, -1), constants)),
            i => force.Known(i) && neck.Components.All(c => c.Known(i)));
        yield return new ComponentGroup(context, [force, .. neck.Components]).Reduce("neck.nij", trace, history => WithMode(history, force, neck));
    }

    private static double Axial(double forceKn, DummyConstants constants) =>
        forceKn >= 0 ? forceKn / constants.NijTensionKn : -forceKn / constants.NijCompressionKn;

    private static double Bending(double momentNm, DummyConstants constants) =>
        momentNm >= 0 ? momentNm / constants.NijFlexionNm : -momentNm / constants.NijExtensionNm;

    private static Reading? WithMode(TimeHistory history, Component force, UpperNeck neck)
    {
        if (Peak.Of(history) is not { } peak)
        {
            return null;
        }

        var at = peak.FromS is { } instant ? (int)Math.Round((instant - history.StartS) / history.IntervalS) : 0;
        return peak with { Detail = $"{(force[at] >= 0 ? "tension" : "compression")}-{(neck.Moment(at) >= 0 ? "flexion" : "extension")}" };
    }
}
