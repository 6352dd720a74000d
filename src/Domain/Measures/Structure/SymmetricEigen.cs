namespace Toepan.Domain.Measures.Structure;

/// <summary>
/// Eigenvalues and eigenvectors of a small real symmetric matrix by cyclic Jacobi rotations in a fixed order, so that the same
/// input gives the same digits anywhere. Accurate to a few ulps of the largest eigenvalue.
/// </summary>
internal static class SymmetricEigen
{
    // Convergence is quadratic: 3 × 3 and 4 × 4 matrices need fewer than ten sweeps.
    private const int Sweeps = 50;

    /// <summary>Eigenvalues in descending order; column k of the vectors belongs to value k. The input is not changed.</summary>
    public static (double[] Values, double[,] Vectors) Solve(double[,] symmetric)
    {
        var n = symmetric.GetLength(0);
        var a = (double[,])symmetric.Clone();
        var v = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            v[i, i] = 1;
        }

        for (var sweep = 0; sweep < Sweeps && OffDiagonal(a) > 0; sweep++)
        {
            for (var p = 0; p < n - 1; p++)
            {
                for (var q = p + 1; q < n; q++)
                {
                    Rotate(a, v, p, q);
                }
            }
        }

        return Sorted(a, v);
    }

    private static double OffDiagonal(double[,] a)
    {
        var sum = 0.0;
        for (var p = 0; p < a.GetLength(0) - 1; p++)
        {
            for (var q = p + 1; q < a.GetLength(0); q++)
            {
                sum += Math.Abs(a[p, q]);
            }
        }

        return sum;
    }

    private static void Rotate(double[,] a, double[,] v, int p, int q)
    {
        var negligible = double.Epsilon + (Math.Abs(a[p, q]) * 1e20);
        if (Math.Abs(a[p, p]) > negligible && Math.Abs(a[q, q]) > negligible)
        {
            a[p, q] = a[q, p] = 0;
        }

        if (a[p, q] == 0)
        {
            return;
        }

        var theta = (a[q, q] - a[p, p]) / (2 * a[p, q]);
        var t = (theta < 0 ? -1 : 1) / (Math.Abs(theta) + Math.Sqrt((theta * theta) + 1));
        var c = 1 / Math.Sqrt((t * t) + 1);
        var s = t * c;
        for (var k = 0; k < a.GetLength(0); k++)
        {
            (a[k, p], a[k, q]) = ((c * a[k, p]) - (s * a[k, q]), (s * a[k, p]) + (c * a[k, q]));
        }

        for (var k = 0; k < a.GetLength(0); k++)
        {
            (a[p, k], a[q, k]) = ((c * a[p, k]) - (s * a[q, k]), (s * a[p, k]) + (c * a[q, k]));
            (v[k, p], v[k, q]) = ((c * v[k, p]) - (s * v[k, q]), (s * v[k, p]) + (c * v[k, q]));
        }

        a[p, q] = a[q, p] = 0;
    }

    private static (double[] Values, double[,] Vectors) Sorted(double[,] a, double[,] v)
    {
        var n = a.GetLength(0);
        var order = Enumerable.Range(0, n).OrderByDescending(k => a[k, k]).ToArray();
        var vectors = new double[n, n];
        for (var k = 0; k < n; k++)
        {
            for (var i = 0; i < n; i++)
            {
                vectors[i, k] = v[i, order[k]];
            }
        }

        return ([.. order.Select(k => a[k, k])], vectors);
    }
}
