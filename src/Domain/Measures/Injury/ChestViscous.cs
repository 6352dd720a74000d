namespace Toepan.Domain.Measures.Injury;

/// <summary>Viscous criterion: how fast the chest was pressed in, times how far.</summary>
/// <formula>VC = max |1.3·V·C| over instants with D &gt; 0, m/s; D = −Dx; V(i) = (8·(D(i+1) − D(i−1)) − (D(i+2) − D(i−2)))/(12·Δt), m/s; C = D/D₀ with D₀ = 229 mm (H3) or 187 mm (HF). D₀ is a constant of the formula, not the dummy's chest depth. Deflection at class 180 (H3) or 600 (HF).</formula>
/// <window>The instant of the peak, the earliest on a tie; none where the chest was never compressed.</window>
/// <edges>The first two and last two samples have no rate and do not count; absent with fewer than five samples, or where the deflection channel is absent or unfit. Where the deflection clips, instants whose rate looks into the stretch are left out of the lower bound. Releasing counts as pressing does: the magnitude is taken.</edges>
/// <sources>Scale and depth [j1727]; five-point rule and limit [r94] Annex 4, 5.2.1.5.</sources>
/// <confidence>C2 for constants and limit, M for the rate rule; sources differ on the class (180 or 600).</confidence>
/// <checks>The closed form of a squared-sine deflection and its sampled values, both dummies.</checks>
public sealed class ChestViscous : IOccupantMeasure
{
    private const int Reach = 2;

    public IEnumerable<Measure> Reduce(OccupantContext context)
    {
        var deflection = ChestDeflection.Ask(context);
        var constants = DummyConstants.Of(context.Occupant.Dummy);
        var intervalS = deflection.Usable?.History.IntervalS ?? 1;
        var trace = new Trace(Viscous, i => Neighbours(i).All(deflection.Known) ? Viscous(i) : 0, i => Neighbours(i).All(deflection.Known));
        yield return new ComponentGroup(context, deflection).Reduce(
            "chest.viscous", trace, history => history.Count > 2 * Reach ? Peak.Of(history) : null);

        double Viscous(int i)
        {
            var pressedM = -deflection[i] / 1000;
            return i < Reach || i >= deflection.Count - Reach || pressedM <= 0
                ? 0
                : Math.Abs(constants.ViscousScale * RateMPerS(deflection, i, intervalS) * (pressedM / constants.ViscousDepthM));
        }

        IEnumerable<int> Neighbours(int i) =>
            Enumerable.Range(i - Reach, (2 * Reach) + 1).Where(k => k >= 0 && k < deflection.Count);
    }

    private static double RateMPerS(Component d, int i, double intervalS) =>
        -((8 * (d[i + 1] - d[i - 1])) - (d[i + 2] - d[i - 2])) / (12 * intervalS) / 1000;
}
