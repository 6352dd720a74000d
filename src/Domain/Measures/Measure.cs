namespace Toepan.Domain.Measures;

/// <summary>An interval that mathematics still allows where the value itself is not known.</summary>
/// <param name="AtLeast">Lower bound in the measure's unit, or null for none.</param>
/// <param name="AtMost">Upper bound, or null for none.</param>
/// <param name="Because">Why only a bound is known.</param>
public sealed record MeasureBounds(double? AtLeast, double? AtMost, string Because);

/// <summary>A zero offset taken from a channel before use.</summary>
/// <param name="Channel">Channel code.</param>
/// <param name="Value">What was subtracted, in working units.</param>
/// <param name="FromS">First sample of the window, s.</param>
/// <param name="ToS">Last sample of the window, s.</param>
public sealed record BiasRemoved(string Channel, double Value, double FromS, double ToS);

/// <summary>
/// One number reduced from channels or points, with everything needed to find it again; or its absence, with the reason.
/// Exactly one of <see cref="Value"/> and <see cref="Absent"/> is set; <see cref="Bounds"/> may stand beside either. Values are rounded to 12 significant digits.
/// </summary>
public sealed record Measure
{
    /// <summary>Code, e.g. <c>head.hic15</c>; the code leads to the file that computes it.</summary>
    public required string Code { get; init; }

    /// <summary>Seat position, or null for the vehicle's own measures.</summary>
    public int? Position { get; init; }

    public double? Value { get; init; }

    /// <summary>Unit; empty for a dimensionless measure.</summary>
    public required string Unit { get; init; }

    /// <summary>Window or instant, s; null where the measure has none.</summary>
    public double? FromS { get; init; }
    public double? ToS { get; init; }

    /// <summary>Channel codes or point names it was reduced from.</summary>
    public IReadOnlyList<string> Sources { get; init; } = [];

    /// <summary>Why there is no value, or null.</summary>
    public string? Absent { get; init; }

    /// <summary>What can still be said where the value is absent, or is only a bound (a clipped channel); else null.</summary>
    public MeasureBounds? Bounds { get; init; }

    /// <summary>Channel frequency class of the inputs, or null.</summary>
    public int? FilterClass { get; init; }

    public IReadOnlyList<BiasRemoved> Bias { get; init; } = [];

    /// <summary>What kind of maximum it was: the Nij mode, the grid point, the tibia cell, …; or null.</summary>
    public string? Detail { get; init; }

    /// <summary>Standard uncertainty in the measure's unit, where the method gives one.</summary>
    public double? Uncertainty { get; init; }

    public string MethodEdition { get; init; } = Measures.MethodEdition.Current;
}
