using Toepan.Domain.Analysis;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis.Classes;

/// <summary>What to compare, and which vehicle is picked out.</summary>
/// <param name="Measures">The question of the table below it.</param>
/// <param name="Pick">Key of the vehicle picked out, or null.</param>
/// <param name="Sort">Measure code the rows are sorted by, or null: by test code.</param>
/// <param name="Descending">Greatest first.</param>
public sealed record ClassComparisonQuery(ClassMeasureQuery Measures, string? Pick = null, string? Sort = null, bool Descending = false);

/// <summary>One row: an occupant of a run with what places it among the others.</summary>
/// <param name="Row">Vehicle, test and values.</param>
/// <param name="MassKg">Kerb mass of the vehicle, else the mass tested; null where neither is known.</param>
/// <param name="Level">Overall level of the run's current rating.</param>
/// <param name="Deciding">What decided that level; null where it is not rated or known by its figures alone.</param>
/// <param name="Standing">How far it compares with the vehicle picked out; where none is, with the whole class.</param>
/// <param name="Rank">Place among the comparable ones by the measure sorted by, from 1, equal values sharing it; null where it is not ranked.</param>
public sealed record ComparisonRow(
    MeasuredRow Row, double? MassKg, ProtectionLevel? Level, DecidingMeasure? Deciding, MassStanding Standing, int? Rank);

/// <summary>One measure of the comparison.</summary>
/// <param name="Statistics">Over all rows.</param>
/// <param name="Limits">Limits and bounds of the default scheme that apply, in the measure's unit.</param>
/// <param name="RepeatBand">Where 95 of 100 repeated runs of the vehicle picked out would be expected; null without a pick or a known scatter.</param>
public sealed record ComparedMeasure(ClassMeasureStatistics Statistics, IReadOnlyList<ComparedLimit> Limits, MeasureBand? RepeatBand);

/// <summary>A limit in words.</summary>
public sealed record ComparedLimit(double Value, string Label);

/// <summary>From–to in a measure's unit.</summary>
public sealed record MeasureBand(double From, double To);

/// <summary>A class side by side.</summary>
/// <param name="Ranked">Whether the rows carry places.</param>
/// <param name="MassRatio">Heaviest to lightest of the rows whose mass is known; null below two.</param>
public sealed record ClassComparison(
    ClassMeasures Table, ClassComparisonQuery Query, IReadOnlyList<ComparisonRow> Rows, IReadOnlyList<ComparedMeasure> Measures, bool Ranked, double? MassRatio);
