using Toepan.Domain.Analysis.Explore;
using Toepan.Domain.Measures;

namespace Toepan.Api.Analysis.Explore;

/// <summary>A question over the programme; the address of the page and of the route is the question.</summary>
/// <param name="X">Measure asked about.</param>
/// <param name="Y">Measure it is set against; null = none.</param>
public sealed record ExploreQuestion(string X, string? Y)
{
    public static IReadOnlyList<string> Views { get; } = ["scatter", "distribution", "trend", "ranked", "groups"];
    public static IReadOnlyList<string> Seats { get; } = ["driver", "passenger", "all"];
    public static IReadOnlyList<string> RunChoices { get; } = ["valid", "all", "rating"];
    public static IReadOnlyList<string> Groupings { get; } = ["class", "dummy", "procedure", "level", "year", "kind"];

    /// <summary>scatter, distribution, trend, ranked or groups.</summary>
    public string View { get; init; } = "scatter";

    /// <summary>Class keys; empty = all.</summary>
    public IReadOnlyList<string> Classes { get; init; } = [];

    public string Seat { get; init; } = "driver";
    public string? Procedure { get; init; }

    /// <summary>valid runs, all runs, or the run that rates each vehicle.</summary>
    public string Runs { get; init; } = "valid";

    /// <summary>What groups are formed by: class, dummy, procedure, level, first model year, or run and summary.</summary>
    public string Group { get; init; } = "class";

    /// <summary>Whether results known by their figures alone take part.</summary>
    public bool Summaries { get; init; } = true;

    public int? YearFrom { get; init; }
    public int? YearTo { get; init; }
    public double? MassFromKg { get; init; }
    public double? MassToKg { get; init; }

    /// <summary>The refusal of a question that cannot be asked, or null.</summary>
    public Failure? Check() =>
        Measure("x", X) ?? (Y is null ? null : Measure("y", Y))
        ?? OneOf("view", View, Views) ?? OneOf("seat", Seat, Seats) ?? OneOf("runs", Runs, RunChoices) ?? OneOf("group", Group, Groupings)
        ?? (View == "scatter" && Y is null ? Failure.BadRequest("y is missing: a scatter sets one measure against another.") : null)
        ?? Ordered("years", YearFrom, YearTo) ?? Ordered("masses", MassFromKg, MassToKg);

    private static Failure? Measure(string name, string? code) => string.IsNullOrEmpty(code)
        ? Failure.BadRequest($"{name} is missing: a measure code such as head.hic15.")
        : MeasureCatalogue.Find(code) is null || code.Contains('<', StringComparison.Ordinal)
            ? Failure.BadRequest($"{name} is '{code}', which methods edition {MethodEdition.Current} does not have.")
            : null;

    private static Failure? OneOf(string name, string value, IReadOnlyList<string> choices) =>
        choices.Contains(value) ? null : Failure.BadRequest($"{name} is '{value}'; it is one of {string.Join(", ", choices)}.");

    private static Failure? Ordered(string what, double? from, double? to) =>
        from > to ? Failure.BadRequest($"The {what} end at {to} before they begin at {from}.") : null;
}

/// <summary>The answer: points, what they say, and the figures behind the picture. Parts that the view does not show are null.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="XTitle">First measure in words.</param>
/// <param name="XUnit">Its unit.</param>
/// <param name="YTitle">Second measure in words, or null.</param>
/// <param name="YUnit">Its unit, or null.</param>
/// <param name="Sentence">What the picture says.</param>
/// <param name="Asked">Runs (occupants) that the question covers.</param>
/// <param name="WithoutFigure">Of those, without one of the figures (or without a model year, for a trend).</param>
/// <param name="Points">Those with the figures; in the order of the list for a ranked view, else by test.</param>
public sealed record ExploreAnswer(
    ExploreQuestion Question, string XTitle, string XUnit, string? YTitle, string? YUnit, string Sentence, int Asked, int WithoutFigure,
    IReadOnlyList<ExplorePoint> Points)
{
    public Domain.Analysis.SampleStatistics? Statistics { get; init; }
    public Relation? Relation { get; init; }
    public IReadOnlyList<HistogramBin>? Bins { get; init; }
    public Trend? Trend { get; init; }
    public Groups? Groups { get; init; }
}
