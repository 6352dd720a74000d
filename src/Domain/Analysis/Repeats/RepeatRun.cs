using Toepan.Domain.Measures;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Analysis.Repeats;

/// <summary>One of several runs of one vehicle, with what is compared.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Occupants">Dummies by seat.</param>
/// <param name="Measures">Every measure of the current reduction.</param>
/// <param name="Curves">Curves filtered as the measures are.</param>
public sealed record RepeatRun(string Test, IReadOnlyList<Occupant> Occupants, IReadOnlyList<Measure> Measures, IReadOnlyList<CurveSet> Curves);
