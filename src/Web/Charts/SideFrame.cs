namespace Toepan.Web.Charts;

/// <summary>
/// Lays a side view on a sheet. One scale for all sheets: a millimetre of vehicle is always the same length, unless a vehicle does not fit, which the
/// picture then says.
/// </summary>
public sealed class SideFrame
{
    private const double SpanAcrossMm = 1560;
    private const double SpanDownMm = 1060;
    private readonly double left;
    private readonly double top;

    /// <param name="view">What is drawn.</param>
    /// <param name="width">Width of the drawing area, in the sheet's own units.</param>
    public SideFrame(SideView view, double width)
        : this(view.All, width)
    {
    }

    /// <summary>A sheet on which all of these points have room.</summary>
    public SideFrame(IEnumerable<SidePoint> points, double width)
    {
        var places = points.SelectMany(p => new[] { p.Before, p.After }).ToList();
        var (acrossFrom, acrossTo) = (places.Min(p => p.Across), places.Max(p => p.Across));
        var (downFrom, downTo) = (places.Min(p => p.Down), places.Max(p => p.Down));
        Fits = acrossTo - acrossFrom <= SpanAcrossMm && downTo - downFrom <= SpanDownMm;
        var fit = Fits ? 1 : Math.Max((acrossTo - acrossFrom) / SpanAcrossMm, (downTo - downFrom) / SpanDownMm);
        PerMm = width / SpanAcrossMm / fit;
        left = ((acrossFrom + acrossTo) / 2) - (SpanAcrossMm * fit / 2);
        top = ((downFrom + downTo) / 2) - (SpanDownMm * fit / 2);
        Height = width * SpanDownMm / SpanAcrossMm;
    }

    /// <summary>Units of the sheet per millimetre of the vehicle.</summary>
    public double PerMm { get; }

    /// <summary>False where this vehicle had to be drawn smaller than the others.</summary>
    public bool Fits { get; }

    public double Height { get; }

    public double X(SidePlace place) => (place.Across - left) * PerMm;

    public double Y(SidePlace place) => (place.Down - top) * PerMm;
}
