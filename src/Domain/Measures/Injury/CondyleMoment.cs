namespace Toepan.Domain.Measures.Injury;

/// <summary>The moment at the joint between head and neck: My_oc = My − d·Fx, N·m (source and d: <see cref="DummyConstants"/>).</summary>
public static class CondyleMoment
{
    /// <summary>At one instant.</summary>
    public static double At(double momentNm, double shearKn, double offsetM) => momentNm - (offsetM * shearKn * 1000);

    /// <summary>As a history, for drawing.</summary>
    /// <param name="momentNm">Moment of the upper neck cell about y, N·m.</param>
    /// <param name="shearKn">Its shear force in x, kN, same instants.</param>
    /// <param name="offsetM">d, m.</param>
    public static double[] Of(ReadOnlySpan<double> momentNm, ReadOnlySpan<double> shearKn, double offsetM)
    {
        var result = new double[momentNm.Length];
        for (var i = 0; i < result.Length; i++)
        {
            result[i] = At(momentNm[i], shearKn[i], offsetM);
        }

        return result;
    }
}
