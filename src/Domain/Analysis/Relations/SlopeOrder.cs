namespace Toepan.Domain.Analysis.Relations;

/// <summary>
/// Pairs of points, ordered by x and then y, whose slope lies below a bound or between two: those whose order by y − b·x is turned round.
/// </summary>
internal static class SlopeOrder
{
    /// <summary>Number of pairs with slope &lt; b.</summary>
    public static long Below(double[] x, double[] y, double b)
    {
        var keys = Keys(x, y, b);
        return Sorted(keys, new double[keys.Length], 0, keys.Length);
    }

    /// <summary>The slopes s with low ≤ s &lt; high, in no order.</summary>
    public static List<double> Between(double[] x, double[] y, double low, double high)
    {
        var places = new int[x.Length];
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = i;
        }

        // Ordered at the lower bound (a stable order: equal keys stay as they are), pairs turned round at the upper one are those between.
        var atLow = Keys(x, y, low);
        Array.Sort(places, (i, j) => atLow[i] != atLow[j] ? atLow[i].CompareTo(atLow[j]) : i.CompareTo(j));
        var (keys, atHigh) = (new double[x.Length], Keys(x, y, high));
        for (var i = 0; i < keys.Length; i++)
        {
            keys[i] = atHigh[places[i]];
        }

        var slopes = new List<double>();
        List(keys, places, 0, keys.Length, (i, j) =>
        {
            if (x[i] != x[j])
            {
                slopes.Add((y[j] - y[i]) / (x[j] - x[i]));
            }
        });
        return slopes;
    }

    private static double[] Keys(double[] x, double[] y, double b)
    {
        var keys = new double[x.Length];
        for (var i = 0; i < keys.Length; i++)
        {
            keys[i] = y[i] - (b * x[i]);
        }

        return keys;
    }

    // Merge sort; the number of strictly descending pairs.
    private static long Sorted(double[] keys, double[] room, int from, int to)
    {
        if (to - from < 2)
        {
            return 0;
        }

        var middle = (from + to) / 2;
        var turned = Sorted(keys, room, from, middle) + Sorted(keys, room, middle, to);
        Array.Copy(keys, from, room, from, to - from);
        for (int left = from, right = middle, place = from; place < to; place++)
        {
            if (right >= to || (left < middle && room[left] <= room[right]))
            {
                keys[place] = room[left++];
            }
            else
            {
                turned += middle - left;
                keys[place] = room[right++];
            }
        }

        return turned;
    }

    private static void List(double[] keys, int[] places, int from, int to, Action<int, int> pair)
    {
        if (to - from < 2)
        {
            return;
        }

        var middle = (from + to) / 2;
        List(keys, places, from, middle, pair);
        List(keys, places, middle, to, pair);
        var (values, owners) = (keys[from..to], places[from..to]);
        for (int left = from, right = middle, place = from; place < to; place++)
        {
            var takeLeft = right >= to || (left < middle && values[left - from] <= values[right - from]);
            if (!takeLeft)
            {
                for (var i = left; i < middle; i++)
                {
                    pair(owners[i - from], owners[right - from]);
                }
            }

            var taken = takeLeft ? left++ : right++;
            (keys[place], places[place]) = (values[taken - from], owners[taken - from]);
        }
    }
}
