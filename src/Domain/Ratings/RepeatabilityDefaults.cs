namespace Toepan.Domain.Ratings;

/// <summary>Scatter assumed between repeated runs until the programme has enough repeats of its own.</summary>
/// <param name="CoefficientOfVariation">Standard deviation over mean, by measure code.</param>
/// <param name="DisplacementStandardDeviationMm">Standard deviation of a structural displacement, mm.</param>
/// <param name="Source">Source.</param>
public sealed record RepeatabilityDefaults(
    IReadOnlyDictionary<string, double> CoefficientOfVariation, double DisplacementStandardDeviationMm, string Source);
