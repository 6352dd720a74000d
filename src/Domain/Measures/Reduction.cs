using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures;

/// <summary>What an engineer decided about a channel, with the reason. A set of flags and a package give one reduction.</summary>
/// <param name="Channel">Channel code the decision concerns.</param>
/// <param name="Kind">What was decided.</param>
/// <param name="FromS">Unfit from this time on, s; null = wholly unfit. Only for <see cref="ChannelFlagKind.Unfit"/>.</param>
/// <param name="Factor">Factor applied to every sample: −1 for polarity, any finite non-zero number for scale. Null for unfit.</param>
/// <param name="Reason">Why, in the engineer's words.</param>
public sealed record ChannelFlag(string Channel, ChannelFlagKind Kind, double? FromS, double? Factor, string Reason);

public enum ChannelFlagKind
{
    Unfit,
    Polarity,
    Scale,
}

/// <summary>Whether one channel can be believed, and what was done to it before use.</summary>
/// <param name="Channel">Channel code.</param>
/// <param name="File">Entry it came from.</param>
/// <param name="Unit">Working unit after conversion: g, kN, N·m, mm, deg, rad/s, …; null where the unit is unknown.</param>
/// <param name="Unfit">Why it cannot be used, or null.</param>
/// <param name="UnfitFromS">Unfit from this time on, s, or null.</param>
/// <param name="RecordedClass">Filter class it was recorded with, or null for unfiltered.</param>
/// <param name="Bias">Zero offset removed, or null where fewer than 10 ms of window exist.</param>
/// <param name="Problems">Quality problems found.</param>
public sealed record ChannelBelief(
    string Channel, string File, string? Unit, string? Unfit, double? UnfitFromS, int? RecordedClass, BiasRemoved? Bias, IReadOnlyList<Problem> Problems);

/// <summary>One cross-check of methods edition 1: a value held against its expectation.</summary>
/// <param name="Check">Key, e.g. <c>vehicle.velocity-ratio</c>, <c>pelvis.velocity-change</c>.</param>
/// <param name="Position">Seat position, or null.</param>
/// <param name="Value">What was found; null where it could not be computed.</param>
/// <param name="Unit">Unit of the value.</param>
/// <param name="Expectation">In words with its numbers.</param>
/// <param name="Agrees">Verdict; null where not checkable.</param>
/// <param name="Note">What it may mean, or why it could not be checked.</param>
public sealed record CrossCheck(string Check, int? Position, double? Value, string Unit, string Expectation, bool? Agrees, string Note);

/// <summary>An interval in which the head touched something, by the force balance.</summary>
public sealed record HeadContact(int Position, double FromS, double ToS, double PeakN);

/// <summary>
/// One aligned point: before, after (aligned), displacement in the vehicle frame, mm. <paramref name="Uncertainty"/> is the largest of the
/// standard uncertainties of its three components, so that one whisker never understates; the components' own stand in <see cref="Uncertainties"/>.
/// </summary>
public sealed record PointDisplacement(
    string Point, Coordinates Before, Coordinates After, double Rearward, double Lateral, double Upward, double Resultant, double? Uncertainty)
{
    /// <summary>Standard uncertainty along x, y and z, mm; null where the fit gives none.</summary>
    public Coordinates? Uncertainties { get; init; }
}

/// <summary>A reference point's own residual after the fit, mm.</summary>
public sealed record ReferenceResidual(string Point, Coordinates Before, double ResidualMm, bool Moved);

/// <summary>The rigid fit and all that follows from it; <see cref="Absent"/> says why there is none.</summary>
public sealed record StructureResult(
    double? RmsMm, IReadOnlyList<ReferenceResidual> References, IReadOnlyList<PointDisplacement> Points, string? Absent);

/// <summary>Everything computed from one package under one method edition and one set of channel flags. Append-only.</summary>
public sealed record Reduction
{
    public required string Test { get; init; }
    public required string MethodEdition { get; init; }
    public required string ProcedureEdition { get; init; }
    public required IReadOnlyList<ChannelFlag> Flags { get; init; }
    public required ConductJudgement Conduct { get; init; }
    public required IReadOnlyList<Measure> Measures { get; init; }
    public required StructureResult Structure { get; init; }
    public required IReadOnlyList<ChannelBelief> Channels { get; init; }
    public required IReadOnlyList<CrossCheck> CrossChecks { get; init; }
    public required IReadOnlyList<HeadContact> HeadContacts { get; init; }

    /// <summary>Problems found while reducing (the reader's own are kept beside the package).</summary>
    public required IReadOnlyList<Problem> Problems { get; init; }

    /// <summary>The measure of a code at a position (null = vehicle), or null when edition 1 gives none there.</summary>
    public Measure? Find(string code, int? position = null) =>
        Measures.FirstOrDefault(m => m.Code == code && m.Position == position);
}
