namespace Toepan.Domain.Analysis.Disagreements;

/// <summary>What kind of contradiction it is.</summary>
public enum DisagreementKind
{
    /// <summary>Instruments and film or inspection say different things.</summary>
    Film,

    /// <summary>The structure predicts the loads of the legs badly.</summary>
    Structure,

    /// <summary>Left and right differ more than in the other runs of the class.</summary>
    Sides,

    /// <summary>A figure lies far outside its class.</summary>
    Outlier,
}

/// <summary>One contradiction of a run, worth a look: it may be a fault, or the most interesting thing the run has to say.</summary>
/// <param name="Kind">Kind.</param>
/// <param name="Test">Test code.</param>
/// <param name="Measure">Measure it is about, or null.</param>
/// <param name="Sentence">What contradicts what, with its figures.</param>
/// <param name="Weight">How far out it is, in its own scale: for sorting within a kind, greatest first.</param>
public sealed record Disagreement(DisagreementKind Kind, string Test, string? Measure, string Sentence, double Weight);
