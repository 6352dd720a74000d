namespace Toepan.Domain.Measures.Injury;

/// <summary>The moment at the joint between head and neck as a history, for drawing: My_oc = My − d·Fx, N·m (source and d: <see cref="DummyConstants"/>).</summary>
public static class CondyleMoment
{
    /// <param name="momentNm">Moment of the upper neck cell about y, N·m.</param>
    /// <param name="shearKn">Its shear force in x, kN, same instants.</param>
    /// <param name="offsetM">d, m.</param>
    public static double[] Of(ReadOnlySpan<double> momentNm, ReadOnlySpan<double> shearKn, double offsetM)
    {
        var result = new double[momentNm.Length];
        for (var i = 0; i < result.Length; i++)
        {
            result[i] = momentNm[i] - (offsetM * shearKn[i] * 1000);
        }

        return result;
    }
}
