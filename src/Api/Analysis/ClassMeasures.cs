using Toepan.Api.Programme;
using Toepan.Domain.Analysis;

namespace Toepan.Api.Analysis;

/// <summary>What to compare across a class.</summary>
/// <param name="Measures">Measure codes; empty = every code there is.</param>
/// <param name="Seat">driver, passenger or all.</param>
/// <param name="Procedure">Procedure key; null = any.</param>
/// <param name="Runs">valid, all, or rating: the run that rates each vehicle.</param>
public sealed record ClassMeasureQuery(
    IReadOnlyList<string> Measures, string Seat = "driver", string? Procedure = null, string Runs = "valid")
{
    /// <summary>Which runs can be asked for: valid ones, every run, or the one that rates each vehicle.</summary>
    public static IReadOnlyList<string> RunChoices { get; } = ["valid", "all", "rating"];

    public static IReadOnlyList<string> Seats { get; } = ["driver", "passenger", "all"];
}

/// <summary>
/// One occupant of one run: values of the measures asked for, in the order of <see cref="ClassMeasures.Measures"/>; null = absent.
/// A measure of the vehicle stands in every row of its run and counts once in the statistics.
/// </summary>
public sealed record ClassMeasureRow(VehicleName Vehicle, string Test, bool Valid, int? Position, string? Seat, IReadOnlyList<double?> Values);

/// <summary>Statistics of one measure over the rows that have it.</summary>
/// <param name="Measure">Code.</param>
/// <param name="Unit">Unit.</param>
/// <param name="Count">Number of values.</param>
/// <param name="Mean">Mean, or null without values.</param>
/// <param name="Sd">Sample standard deviation (n − 1), or null below two values.</param>
/// <param name="Minimum">Least value.</param>
/// <param name="LowerQuartile">First quartile, type 7.</param>
/// <param name="Median">Median.</param>
/// <param name="UpperQuartile">Third quartile, type 7.</param>
/// <param name="Maximum">Greatest value.</param>
public sealed record ClassMeasureStatistics(
    string Measure, string Unit, int Count, double? Mean, double? Sd, double? Minimum, double? LowerQuartile, double? Median,
    double? UpperQuartile, double? Maximum)
{
    public static ClassMeasureStatistics Of(string measure, string unit, SampleStatistics statistics) => new(
        measure, unit, statistics.Count, statistics.Mean, statistics.Sd, statistics.Minimum, statistics.LowerQuartile, statistics.Median,
        statistics.UpperQuartile, statistics.Maximum);
}

/// <summary>Vehicles × measures of a class, and their statistics.</summary>
public sealed record ClassMeasures(
    string Class, string Title, string Seat, string Runs, IReadOnlyList<string> Measures, IReadOnlyList<ClassMeasureRow> Rows,
    IReadOnlyList<ClassMeasureStatistics> Statistics);
