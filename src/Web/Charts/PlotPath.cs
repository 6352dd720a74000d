using System.Globalization;
using System.Text;

namespace Toepan.Web.Charts;

/// <summary>SVG path data from values and axes.</summary>
public static class PlotPath
{
    /// <summary>Straight segments through every finite point inside the abscissa's range; a gap starts a new stretch.</summary>
    public static string Line(IReadOnlyList<double> x, IReadOnlyList<double> y, Axis xAxis, Axis yAxis)
    {
        var path = new StringBuilder();
        var pen = false;
        for (var i = 0; i < x.Count; i++)
        {
            if (!double.IsFinite(y[i]) || x[i] < xAxis.From || x[i] > xAxis.To)
            {
                pen = false;
                continue;
            }

            path.Append(pen ? 'L' : 'M').Append(Number(xAxis.Pixel(x[i]))).Append(' ').Append(Number(yAxis.Pixel(y[i])));
            pen = true;
        }

        return path.ToString();
    }

    /// <summary>A coordinate with a tenth of a pixel.</summary>
    public static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
