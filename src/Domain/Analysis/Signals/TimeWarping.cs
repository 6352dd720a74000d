namespace Toepan.Domain.Analysis.Signals;

/// <summary>Two signals stretched onto one another: sample k of one is paired with sample k of the other.</summary>
/// <param name="Cost">Σ (t − c)² along the path.</param>
public sealed record WarpedPair(double[] Reference, double[] Compared, double Cost);

/// <summary>
/// Dynamic time warping: the path of steps (1,0), (0,1), (1,1) from both first to both last samples that has the least sum of squared
/// differences, paired samples no further apart than the window. Of equal costs the diagonal step is taken, then the reference's.
/// Source: H. Sakoe and S. Chiba, "Dynamic programming algorithm optimization for spoken word recognition", IEEE Trans. ASSP 26 (1978).
/// </summary>
public static class TimeWarping
{
    private const byte Diagonal = 0;
    private const byte AlongReference = 1;
    private const byte AlongCompared = 2;

    /// <param name="t">Reference, at least one sample.</param>
    /// <param name="c">Compared, of the same length.</param>
    /// <param name="window">Largest |i − j|; 0 pairs equal indices.</param>
    public static WarpedPair Align(ReadOnlySpan<double> t, ReadOnlySpan<double> c, int window)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(c.Length, t.Length, nameof(c));
        ArgumentOutOfRangeException.ThrowIfZero(t.Length, nameof(t));
        var (steps, cost) = Fill(t, c, window);
        return Walk(t, c, window, steps, cost);
    }

    // Row i holds the columns i − window … i + window; outside of them, and of the signals, the cost is infinite.
    private static (byte[] Steps, double Cost) Fill(ReadOnlySpan<double> t, ReadOnlySpan<double> c, int window)
    {
        var width = (2 * window) + 1;
        var steps = new byte[checked(t.Length * width)];
        var above = new double[width + 1];
        var row = new double[width + 1];
        Array.Fill(above, double.PositiveInfinity);
        for (var i = 0; i < t.Length; i++)
        {
            Array.Fill(row, double.PositiveInfinity);
            for (var k = Math.Max(0, window - i); k < width && i + k - window < c.Length; k++)
            {
                var apart = t[i] - c[i + k - window];
                var (before, step) = i == 0 && k == window ? (0, Diagonal) : Cheapest(above[k], above[k + 1], k > 0 ? row[k - 1] : double.PositiveInfinity);
                row[k] = before + (apart * apart);
                steps[(i * width) + k] = step;
            }

            (above, row) = (row, above);
        }

        return (steps, above[window]);
    }

    // One row up the same column stands one place to the right, the diagonal straight above.
    private static (double Cost, byte Step) Cheapest(double diagonal, double up, double left) =>
        diagonal <= up && diagonal <= left ? (diagonal, Diagonal) : up <= left ? (up, AlongReference) : (left, AlongCompared);

    private static WarpedPair Walk(ReadOnlySpan<double> t, ReadOnlySpan<double> c, int window, byte[] steps, double cost)
    {
        var width = (2 * window) + 1;
        var (warpedT, warpedC) = (new List<double>(2 * t.Length), new List<double>(2 * t.Length));
        var (i, j) = (t.Length - 1, c.Length - 1);
        while (true)
        {
            warpedT.Add(t[i]);
            warpedC.Add(c[j]);
            if (i == 0 && j == 0)
            {
                break;
            }

            var step = steps[(i * width) + j - i + window];
            i -= step == AlongCompared ? 0 : 1;
            j -= step == AlongReference ? 0 : 1;
        }

        warpedT.Reverse();
        warpedC.Reverse();
        return new([.. warpedT], [.. warpedC], cost);
    }
}
