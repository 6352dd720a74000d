using System.Numerics;
using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Injury;

/// <summary>How hard and how long the head was accelerated, in one number: a short window of the head's resultant acceleration, chosen so that the number is largest.</summary>
/// <formula>HIC = max over t1 &lt; t2, t2 − t1 ≤ W, of (t2 − t1)·[∫ a dt / (t2 − t1)]^2.5, with W = 15 ms (head.hic15) or 36 ms (head.hic36), the interval equal to W included; a = √(ax² + ay² + az²) in g, t in s. The integral by trapezoids, t1 and t2 on samples, every pair of samples looked at; x^2.5 is computed as x²·√x.</formula>
/// <window>From t1 to t2. Pairs that agree to 12 significant digits are a tie: the earliest t1, then the earliest t2.</window>
/// <edges>Each component is filtered before the resultant is formed. Absent where one of the three axes is absent or unfit, where they do not share interval and start, or with fewer than two samples. A clipped axis, or the axes that are left, give a lower bound: the criterion only grows with the resultant.</edges>
/// <sources>Limit and windows [fmvss208] S6.2, S15.3.2; the expression itself [fmvss208], printed there as a picture; filter class [part572] 572.36(i), 572.137(m).</sources>
/// <confidence>C1 for windows and class, M for the expression (universally known).</confidence>
/// <checks>Closed forms for square, half-sine, triangle, sawtooth and haversine pulses, windows limiting and not; a search over all pairs on random signals.</checks>
public sealed class HeadInjuryCriterion : IOccupantMeasure
{
    public const double ShortWindowS = 0.015;
    public const double LongWindowS = 0.036;

    // Two values that agree to 12 digits differ by less than this in proportion; a cheap sieve before the digits are compared.
    private const double TieSieve = 1.1e-11;

    // More than the rounding of a bound, far less than what it is to exclude.
    private const double BoundSlack = 1e-9;

    // Lengths looked at first, so that the search starts with a good best.
    private const int Probes = 32;

    public IEnumerable<Measure> Reduce(OccupantContext context)
    {
        var (group, trace) = HeadAxes.Of(context);
        yield return group.Reduce("head.hic15", trace, a => Of(a, ShortWindowS));
        yield return group.Reduce("head.hic36", trace, a => Of(a, LongWindowS));
    }

    /// <summary>The criterion of a resultant in g, with its window; null with fewer than two samples.</summary>
    internal static Reading? Of(TimeHistory resultant, double windowS)
    {
        var longest = Math.Min(SampleGrid.Within(windowS, resultant.IntervalS), resultant.Count - 1);
        if (longest < 1)
        {
            return null;
        }

        var integral = Integrate(resultant);
        if (integral[^1] == 0)
        {
            return new(0, resultant.TimeAt(0), resultant.TimeAt(1));
        }

        var (largest, best) = Largest(integral, longest, resultant.IntervalS);
        var (first, length) = EarliestPair(integral, largest, best, resultant.IntervalS);
        return new(best, resultant.TimeAt(first), resultant.TimeAt(first + length));
    }

    /// <summary>
    /// The largest criterion of each window length, in samples, and of all. A resultant is never negative, so the integral only grows: no length
    /// up to n gains more than n does, and none from m to n can exceed gain(n)^2.5/(m·dt)^1.5. Lengths that this bound puts below the best are
    /// passed over and stay 0; the result is that of the search over all of them.
    /// </summary>
    private static (double[] Largest, double Best) Largest(double[] integral, int longest, double intervalS)
    {
        var largest = new double[longest + 1];
        var best = 0.0;
        for (var probe = 1; probe <= Probes; probe++)
        {
            Look(Math.Max(1, (int)((long)longest * probe / Probes)));
        }

        Search(1, longest);
        return (largest, best);

        double Look(int length)
        {
            var gain = LargestGain(integral, length);
            largest[length] = Criterion(gain, length * intervalS);
            best = Math.Max(best, largest[length]);
            return gain;
        }

        void Search(int shortest, int longestOfThese)
        {
            if (shortest > longestOfThese)
            {
                return;
            }

            var gain = Look(longestOfThese);
            if (shortest == longestOfThese || Criterion(gain, shortest * intervalS) * (1 + BoundSlack) < best * (1 - TieSieve))
            {
                return;
            }

            var middle = shortest + ((longestOfThese - 1 - shortest) / 2);
            Search(middle + 1, longestOfThese - 1);
            Search(shortest, middle);
        }
    }

    private static double Criterion(double integral, double durationS)
    {
        var mean = integral / durationS;
        return durationS * (mean * mean * Math.Sqrt(mean));
    }

    private static double[] Integrate(TimeHistory history)
    {
        var a = history.Values.Span;
        var integral = new double[a.Length];
        for (var i = 1; i < a.Length; i++)
        {
            integral[i] = integral[i - 1] + (0.5 * (a[i - 1] + a[i]) * history.IntervalS);
        }

        return integral;
    }

    // For windows of one length the criterion grows with the integral alone, so one search without roots finds the best of them.
    // A maximum is the same in any order, so the lanes leave the digits alone.
    private static double LargestGain(ReadOnlySpan<double> integral, int length)
    {
        var later = integral[length..];
        var earlier = integral[..later.Length];
        var largest = Vector<double>.Zero;
        var i = 0;
        for (; i <= later.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            largest = Vector.Max(largest, new Vector<double>(later[i..]) - new Vector<double>(earlier[i..]));
        }

        var gain = 0.0;
        for (var lane = 0; lane < Vector<double>.Count; lane++)
        {
            gain = Math.Max(gain, largest[lane]);
        }

        for (; i < later.Length; i++)
        {
            gain = Math.Max(gain, later[i] - earlier[i]);
        }

        return gain;
    }

    private static (int First, int Length) EarliestPair(double[] integral, double[] largest, double best, double intervalS)
    {
        var (first, length) = (integral.Length, 0);
        var digits = Digits.Round12(best);
        for (var n = 1; n < largest.Length; n++)
        {
            if (!Ties(largest[n]))
            {
                continue;
            }

            var last = Math.Min(first, integral.Length - n);
            for (var i = 0; i < last; i++)
            {
                if (Ties(Criterion(integral[i + n] - integral[i], n * intervalS)))
                {
                    (first, length) = (i, n);
                    break;
                }
            }
        }

        return (first, length);

        bool Ties(double value) => value >= best * (1 - TieSieve) && Digits.Round12(value) == digits;
    }
}
