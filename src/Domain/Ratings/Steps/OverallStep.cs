namespace Toepan.Domain.Ratings.Steps;

/// <summary>The overall level, rule by rule.</summary>
/// <param name="Base">The worse of life and legs.</param>
/// <param name="Tied">After the tie to the worst region.</param>
/// <param name="Structured">After the structure.</param>
/// <param name="Final">After the caps.</param>
internal readonly record struct OverallStep(ProtectionLevel Base, ProtectionLevel Tied, ProtectionLevel Structured, ProtectionLevel Final)
{
    public static OverallStep Of(
        Scheme scheme, ProtectionLevel life, ProtectionLevel legs, ProtectionLevel worstRegion, ProtectionLevel structure, ProtectionLevel capAtBest)
    {
        var worse = ProtectionLevels.Worse(life, legs);
        var best = (ProtectionLevel)Math.Max(0, (int)worstRegion - scheme.Overall.StepsBetterThanWorst);
        var tied = worse > worstRegion ? worstRegion : worse < best ? best : worse;
        var held = scheme.Structure.Holds.Where(hold => hold.When == structure).Select(hold => hold.AtBest).DefaultIfEmpty(ProtectionLevel.High).Max();
        var structured = ProtectionLevels.Worse(tied, held);
        return new(worse, tied, structured, ProtectionLevels.Worse(structured, capAtBest));
    }

    /// <summary>1 − Π(1 − e) over groups, the worst of each, rounded to 12 digits.</summary>
    public static double Joint(IReadOnlyList<IReadOnlyList<string>> groups, Func<string, double> excess)
    {
        var none = 1.0;
        foreach (var group in groups)
        {
            none *= 1 - group.Max(excess);
        }

        return Measures.Digits.Round12(1 - none);
    }
}
