namespace Toepan.Web.Charts;

/// <summary>One dot of a strip.</summary>
/// <param name="Value">Where it stands, in the strip's unit.</param>
/// <param name="Label">Who it is.</param>
/// <param name="Address">Where its dot leads, or null.</param>
/// <param name="Picked">Drawn large and labelled.</param>
/// <param name="Faint">Drawn as a ring: not comparable with the picked one.</param>
public sealed record StripDot(double Value, string Label, string? Address, bool Picked, bool Faint);

/// <summary>Values of a group along one line.</summary>
/// <param name="Title">What is shown.</param>
/// <param name="Unit">Unit of the axis; empty for none.</param>
/// <param name="Says">The same in one sentence.</param>
public sealed record StripModel(string Title, string Unit, string Says, IReadOnlyList<StripDot> Dots)
{
    /// <summary>First quartile, median, third quartile; null without values.</summary>
    public (double Lower, double Median, double Upper)? Quartiles { get; init; }

    /// <summary>What a repeated run of the picked vehicle might give.</summary>
    public (double From, double To)? RepeatBand { get; init; }

    /// <summary>What the axis spans at least, so that strips beside one another compare; null = the dots.</summary>
    public (double From, double To)? Range { get; init; }

    public IReadOnlyList<PlotLimit> Limits { get; init; } = [];
}
