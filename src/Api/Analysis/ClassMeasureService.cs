using Toepan.Api.Programme;
using Toepan.Api.Security;

namespace Toepan.Api.Analysis;

/// <summary>What to compare across a class.</summary>
/// <param name="Measures">Measure codes; empty = every code there is.</param>
/// <param name="Seat">driver, passenger or all.</param>
/// <param name="Procedure">Procedure key; null = any.</param>
public sealed record ClassMeasureQuery(IReadOnlyList<string> Measures, string Seat = "driver", string? Procedure = null);

/// <summary>One run's values of the measures asked for, in the order of <see cref="ClassMeasures.Measures"/>; null = absent.</summary>
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
    double? UpperQuartile, double? Maximum);

/// <summary>Vehicles × measures of a class, and their statistics.</summary>
public sealed record ClassMeasures(
    string Class, string Title, string Seat, IReadOnlyList<string> Measures, IReadOnlyList<ClassMeasureRow> Rows,
    IReadOnlyList<ClassMeasureStatistics> Statistics);

/// <summary>Measures across a vehicle class.</summary>
public sealed class ClassMeasureService
{
    public Task<Outcome<ClassMeasures>> Get(Viewer viewer, string vehicleClass, ClassMeasureQuery query, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
