namespace Toepan.Domain.Analysis.Repeats;

/// <summary>One measure over repeated runs.</summary>
/// <param name="Code">Measure code.</param>
/// <param name="Position">Seat position; null for the vehicle.</param>
/// <param name="Unit">Unit of values, differences, mean and deviation.</param>
/// <param name="Values">A value for each run, in the order of the runs; null = absent.</param>
/// <param name="Differences">Each value minus the first run's; null where either is absent.</param>
/// <param name="Count">Number of values.</param>
/// <param name="Mean">Mean, or null without values.</param>
/// <param name="Sd">Standard deviation with n − 1, or null below two values.</param>
/// <param name="Cv">s/|mean|, or null.</param>
/// <param name="NoCv">Why no coefficient of variation is given, or null.</param>
public sealed record RepeatedMeasure(
    string Code, int? Position, string Unit, IReadOnlyList<double?> Values, IReadOnlyList<double?> Differences, int Count, double? Mean, double? Sd,
    double? Cv, string? NoCv);
