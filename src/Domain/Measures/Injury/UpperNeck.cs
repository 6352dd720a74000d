namespace Toepan.Domain.Measures.Injury;

/// <summary>The upper neck cell and the moment it gives at the joint between head and neck (occipital condyle).</summary>
internal sealed class UpperNeck
{
    public const string Location = "NECKUP00";

    private readonly Component moment;
    private readonly Component shear;
    private readonly double offsetM;

    public UpperNeck(OccupantContext context, int filterClass)
    {
        moment = Component.Ask(context, Location, "MOY", filterClass);
        shear = Component.Ask(context, Location, "FOX", filterClass);
        offsetM = DummyConstants.Of(context.Occupant.Dummy).CondyleOffsetM;
    }

    public IReadOnlyList<Component> Components => [moment, shear];

    /// <summary>My_oc = My − d·Fx, N·m.</summary>
    public double Moment(int index) => CondyleMoment.At(moment[index], shear[index], offsetM);

    /// <summary>
    /// The part of My_oc on the side of <paramref name="sign"/>: certain only where neither channel hides in a stop that could
    /// lower it, since the two terms may oppose one another.
    /// </summary>
    public Trace Towards(int sign) => new(
        i => Math.Max(sign * Moment(i), 0),
        i => AtLeast(i, sign),
        i => Settled(i, sign));

    /// <summary>What the moment on that side certainly reaches, N·m; 0 where that is not known.</summary>
    public double AtLeast(int index, int sign) =>
        moment.Reaches(index, sign) && shear.Reaches(index, -sign) ? Math.Max(sign * Moment(index), 0) : 0;

    private bool Settled(int index, int sign) =>
        (moment.Known(index) && shear.Known(index)) ||
        (sign * Moment(index) <= 0 && !moment.ClippedTowards(index, sign) && !shear.ClippedTowards(index, -sign));
}
