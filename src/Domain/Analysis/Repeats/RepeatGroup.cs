namespace Toepan.Domain.Analysis.Repeats;

/// <summary>Values of one measure in valid runs of one vehicle by one procedure, in one seat with one dummy.</summary>
/// <param name="Key">Vehicle and procedure: what makes the runs repeats of one another.</param>
/// <param name="Code">Measure code.</param>
/// <param name="Values">Two values or more.</param>
public sealed record RepeatGroup(string Key, string Code, IReadOnlyList<double> Values);
