namespace Toepan.Web.Charts;

/// <summary>Tone of a series: each has its own colour and its own dash, so that neither carries it alone.</summary>
public enum Tone
{
    Navy,
    Teal,
    Ochre,
    Plum,
}

/// <summary>One line of a plot.</summary>
/// <param name="Label">Written at the line's end.</param>
/// <param name="X">Abscissas, ascending for time plots.</param>
/// <param name="Y">Ordinates; NaN breaks the line.</param>
/// <param name="Tone">Colour and dash.</param>
public sealed record Series(string Label, IReadOnlyList<double> X, IReadOnlyList<double> Y, Tone Tone);

/// <summary>A stretch of the abscissa that is shaded and named: a HIC window, a contact interval.</summary>
public sealed record PlotBand(double From, double To, string Label);

/// <summary>A level across the plot: a limit.</summary>
public sealed record PlotLimit(double Value, string Label);

/// <summary>A point marked and named: a maximum.</summary>
public sealed record PlotMark(double X, double Y, string Label);

/// <summary>Everything one time plot shows.</summary>
public sealed record PlotModel
{
    /// <summary>Title, as its caption begins.</summary>
    public required string Title { get; init; }

    /// <summary>Name and unit of the ordinate.</summary>
    public required string YLabel { get; init; }
    public string XLabel { get; init; } = "ms from contact";
    public required IReadOnlyList<Series> Series { get; init; }
    public IReadOnlyList<PlotBand> Bands { get; init; } = [];
    public IReadOnlyList<PlotLimit> Limits { get; init; } = [];
    public IReadOnlyList<PlotMark> Marks { get; init; } = [];

    /// <summary>What the picture says, in a sentence: caption and text alternative.</summary>
    public required string Says { get; init; }

    /// <summary>Range of the abscissa; null = the data's.</summary>
    public (double From, double To)? XRange { get; init; }
}
