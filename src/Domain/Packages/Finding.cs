namespace Toepan.Domain.Packages;

/// <summary>How much a finding weighs.</summary>
public enum FindingSeverity
{
    Note,
    Concern,
    Severe,
}

/// <summary>One row of Movie/findings.csv: something film or inspection showed.</summary>
/// <param name="TimeMs">Film time, ms from contact; null for an inspection after the run.</param>
/// <param name="Camera">Camera, or null.</param>
/// <param name="Kind">Kind as written, lower case, e.g. <c>head-strike</c>; unknown kinds are kept and cap nothing.</param>
/// <param name="Region">head, neck, chest, thigh-left, thigh-right, lower-leg-left, lower-leg-right, structure, restraint, vehicle.</param>
/// <param name="Severity">note, concern or severe.</param>
/// <param name="Note">Free text.</param>
/// <param name="Position">Seat position it concerns; null = the driver.</param>
/// <param name="Line">Line in findings.csv.</param>
public sealed record Finding(
    double? TimeMs, string? Camera, string Kind, string Region, FindingSeverity Severity, string Note, int? Position, int Line);
