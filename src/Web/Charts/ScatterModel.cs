namespace Toepan.Web.Charts;

/// <summary>One point of a scatter.</summary>
/// <param name="X">First measure.</param>
/// <param name="Y">Second measure.</param>
/// <param name="Group">Index of its group: colour and shape.</param>
/// <param name="Size">Radius in pixels.</param>
/// <param name="Label">Who it is.</param>
/// <param name="Picked">Drawn with a ring and labelled.</param>
public sealed record ScatterPoint(double X, double Y, int Group, double Size, string Label, bool Picked);

/// <summary>A straight line y = intercept + slope·x.</summary>
public sealed record ScatterLine(double Slope, double Intercept, string Label, bool Dashed);

/// <summary>Two measures against one another.</summary>
public sealed record ScatterModel(string Title, string Says, string XLabel, string YLabel, IReadOnlyList<ScatterPoint> Points, IReadOnlyList<string> Groups)
{
    public IReadOnlyList<ScatterLine> Lines { get; init; } = [];

    /// <summary>From so many points on the picture counts them in cells.</summary>
    public const int MostPoints = 1500;
}
