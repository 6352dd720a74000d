using Toepan.Domain.Measures;
using Toepan.Domain.Packages;

namespace Toepan.Domain.Analysis.Disagreements;

/// <summary>One run of a class as the finder sees it: its driver's figures, and, of a run with channels, what film and the cross-checks say.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Values">Figures by measure code; absent ones are missing.</param>
/// <param name="Findings">Findings that stand.</param>
/// <param name="Checks">Cross-checks.</param>
/// <param name="Summary">Known by its figures alone: counts among the others, is not itself reported as contradicting film.</param>
public sealed record ClassRun(
    string Test, IReadOnlyDictionary<string, double> Values, IReadOnlyList<Finding> Findings, IReadOnlyList<CrossCheck> Checks, bool Summary);
