using System.Globalization;

namespace Toepan.Web.Charts;

/// <summary>A linear axis: data from–to laid on pixels from–to, with ticks on round numbers.</summary>
public sealed class Axis
{
    private readonly double pixelFrom;
    private readonly double pixelTo;

    /// <param name="from">Least value shown.</param>
    /// <param name="to">Greatest value shown; an empty range is widened by one.</param>
    /// <param name="pixelFrom">Where <paramref name="from"/> stands.</param>
    /// <param name="pixelTo">Where <paramref name="to"/> stands; may be less, as on a vertical axis.</param>
    public Axis(double from, double to, double pixelFrom, double pixelTo)
    {
        (From, To) = to > from ? (from, to) : (from - 0.5, from + 0.5);
        (this.pixelFrom, this.pixelTo) = (pixelFrom, pixelTo);
    }

    public double From { get; }
    public double To { get; }

    /// <summary>An axis over the values, widened to round numbers; always holds zero where asked.</summary>
    public static Axis Over(IEnumerable<double> values, double pixelFrom, double pixelTo, bool withZero = true)
    {
        var (least, greatest) = withZero ? (0.0, 0.0) : (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var value in values.Where(double.IsFinite))
        {
            least = Math.Min(least, value);
            greatest = Math.Max(greatest, value);
        }

        if (!double.IsFinite(least) || least >= greatest)
        {
            (least, greatest) = (double.IsFinite(least) ? least : 0, (double.IsFinite(least) ? least : 0) + 1);
        }

        var step = Step(greatest - least, 5);
        return new Axis(Math.Floor(least / step) * step, Math.Ceiling(greatest / step) * step, pixelFrom, pixelTo);
    }

    public double Pixel(double value) => pixelFrom + ((value - From) / (To - From) * (pixelTo - pixelFrom));

    /// <summary>About <paramref name="wanted"/> ticks on multiples of 1, 2 or 5.</summary>
    public IEnumerable<double> Ticks(int wanted)
    {
        var step = Step(To - From, wanted);
        for (var index = (long)Math.Ceiling((From / step) - 1e-9); index * step <= To + (step * 1e-9); index++)
        {
            yield return index * step;
        }
    }

    /// <summary>A tick's text: as many decimals as its step needs, with a real minus sign.</summary>
    public string Text(double tick, int wanted)
    {
        var decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(Step(To - From, wanted)) + 1e-9));
        var text = Math.Round(tick, decimals, MidpointRounding.AwayFromZero).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.StartsWith('-') ? (double.Parse(text, CultureInfo.InvariantCulture) == 0 ? text[1..] : "\u2212" + text[1..]) : text;
    }

    private static double Step(double span, int wanted)
    {
        var rough = span / Math.Max(1, wanted);
        var decade = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return decade * ((rough / decade) switch { <= 1 => 1, <= 2 => 2, <= 5 => 5, _ => 10 });
    }
}
