using Toepan.Domain.Analysis;

namespace Toepan.Api.Analysis;

/// <summary>What to compare across a class.</summary>
/// <param name="Measures">Measure codes; empty = every code there is.</param>
/// <param name="Seat">driver, passenger or all.</param>
/// <param name="Procedure">Procedure key; null = any.</param>
/// <param name="Runs">One of <see cref="RunChoices"/>.</param>
public sealed record ClassMeasureQuery(
    IReadOnlyList<string> Measures, string Seat = "driver", string? Procedure = null, string Runs = "valid")
{
    /// <summary>Which runs can be asked for: the words of <see cref="RunChoice"/>.</summary>
    public static IReadOnlyList<string> RunChoices { get; } = [.. Enum.GetNames<RunChoice>().Select(name => name.ToLowerInvariant())];

    public static IReadOnlyList<string> Seats { get; } = Analysis.Seats.Words;

    internal static RunChoice? Choice(string word) => RunChoices.Contains(word) ? Enum.Parse<RunChoice>(word, ignoreCase: true) : null;
}

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
    string Class, string Title, string Seat, string Runs, string? Procedure, IReadOnlyList<string> Measures, IReadOnlyList<MeasuredRow> Rows,
    IReadOnlyList<ClassMeasureStatistics> Statistics)
{
    /// <summary>Editions the runs were reduced under.</summary>
    public IReadOnlyList<string> MethodEditions => [.. Rows.Select(row => row.MethodEdition).OfType<string>().Distinct().Order(StringComparer.Ordinal)];
}
