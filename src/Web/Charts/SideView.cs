using Toepan.Domain.Measures;
using Toepan.Domain.Packages;

namespace Toepan.Web.Charts;

/// <summary>A place in the side view, mm: across = forward to the left, down = down.</summary>
public readonly record struct SidePlace(double Across, double Down);

/// <summary>One point of the side view before and after the crash.</summary>
public sealed record SidePoint(PointDisplacement Source, SidePlace Before, SidePlace After)
{
    public string Name => Source.Point;
}

/// <summary>
/// The survival space from the side, from measured points only: where the structure in front of the driver stood before and after. Of each row of
/// the footwell and of the knee panel the point that moved furthest rearward is drawn. Seen from the driver's side: forward is left.
/// </summary>
public sealed record SideView
{
    private static readonly string[][] FrontParts =
    [
        ["windscreen-base"], ["knee-panel-outer", "knee-panel-inner"], ["footwell-upper-outer", "footwell-upper-centre", "footwell-upper-inner"],
        ["footwell-middle-outer", "footwell-middle-centre", "footwell-middle-inner"], ["footwell-lower-outer", "footwell-lower-centre", "footwell-lower-inner"],
    ];

    private static readonly string[][] SeatParts = [["seat-front-outer", "seat-front-inner"], ["seat-rear-outer", "seat-rear-inner"]];

    /// <summary>From windscreen base down to the footwell floor, the parts that were measured, top to bottom.</summary>
    public required IReadOnlyList<SidePoint> Front { get; init; }

    public required IReadOnlyList<SidePoint> Seat { get; init; }
    public required IReadOnlyList<SidePoint> DoorFront { get; init; }
    public required IReadOnlyList<SidePoint> DoorRear { get; init; }

    /// <summary>Wheel hub, or null.</summary>
    public required SidePoint? Wheel { get; init; }

    /// <summary>Brake pedal, or null.</summary>
    public required SidePoint? Pedal { get; init; }

    /// <summary>The footwell point that moved furthest, or null.</summary>
    public SidePoint? Footwell => Front.Where(p => p.Name.StartsWith("footwell-", StringComparison.Ordinal)).MaxBy(p => p.Source.Rearward);

    public SidePoint? KneePanel => Front.FirstOrDefault(p => p.Name.StartsWith("knee-panel", StringComparison.Ordinal));

    public IEnumerable<SidePoint> All => [.. Front, .. Seat, .. DoorFront, .. DoorRear, .. new[] { Wheel, Pedal }.OfType<SidePoint>()];

    /// <summary>Whether there is enough to draw.</summary>
    public bool Drawable => Front.Count >= 2 || Wheel is not null;

    /// <summary>The view of aligned points; parts that were not measured are left out.</summary>
    public static SideView Of(IReadOnlyList<PointDisplacement> points) => new()
    {
        Front = Parts(points, FrontParts),
        Seat = Parts(points, SeatParts),
        DoorFront = Parts(points, [["door-opening-front-upper"], ["door-opening-front-lower"]]),
        DoorRear = Parts(points, [["door-opening-rear-upper"], ["door-opening-rear-lower"]]),
        Wheel = Parts(points, [["wheel-hub"]]).FirstOrDefault(),
        Pedal = Parts(points, [["pedal-brake"]]).FirstOrDefault(),
    };

    private static List<SidePoint> Parts(IReadOnlyList<PointDisplacement> points, string[][] parts) =>
        [.. parts.Select(names => points.Where(p => names.Contains(p.Point)).MaxBy(p => p.Rearward)).OfType<PointDisplacement>().Select(Place)];

    private static SidePoint Place(PointDisplacement p) => new(p, Place(p.Before), Place(p.After));

    private static SidePlace Place(Coordinates c) => new(-c.X, c.Z);
}
