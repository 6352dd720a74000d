using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Programme.Equipment;

/// <summary>A piece of equipment in a list.</summary>
/// <param name="DueOn">Last day its latest calibration holds; null without one.</param>
/// <param name="Runs">Runs it is assigned to.</param>
public sealed record EquipmentItem(
    long Id, EquipmentKind Kind, string Serial, string Title, string? Range, string? Note, DateOnly? RetiredOn, DateOnly? DueOn, int Runs, uint Version);

/// <summary>A calibration as it was entered.</summary>
public sealed record CalibrationEntry(long Id, DateOnly On, DateOnly DueOn, string Certificate, string By, DateTimeOffset At);

/// <summary>A dummy check as it was entered.</summary>
public sealed record DummyCheckEntry(long Id, DummyPart Part, bool Passed, DateOnly On, string Note, string By, DateTimeOffset At);

/// <summary>One piece of equipment with everything recorded about it.</summary>
public sealed record EquipmentDetail(
    EquipmentItem Item, IReadOnlyList<CalibrationEntry> Calibrations, IReadOnlyList<DummyCheckEntry> Checks, IReadOnlyList<string> Tests);

/// <summary>What somebody enters about a piece of equipment.</summary>
public sealed record EquipmentFacts(EquipmentKind Kind, string Serial, string Title, string? Range, string? Note, DateOnly? RetiredOn);

/// <summary>Equipment of one run.</summary>
/// <param name="Position">Seat position of a dummy.</param>
/// <param name="Fault">Why it was not in date on the day of the run, or null.</param>
/// <param name="Channels">Channels whose header names it; empty where it was assigned by hand.</param>
public sealed record RunEquipment(long Id, EquipmentKind Kind, string Serial, string Title, int? Position, string? Fault, IReadOnlyList<string> Channels);

/// <summary>Equipment of a run, and the parts of its dummies that a failed check puts in doubt.</summary>
public sealed record RunEquipmentList(string Test, IReadOnlyList<RunEquipment> Equipment, IReadOnlyList<PartInDoubt> InDoubt);

/// <summary>A part of a dummy in doubt.</summary>
/// <param name="Position">Seat position.</param>
/// <param name="Part">Part.</param>
/// <param name="Text">Why, in a sentence without a full stop.</param>
/// <param name="Concern">Key of the concern.</param>
/// <param name="Since">When the failed check was entered.</param>
public sealed record PartInDoubt(int Position, DummyPart Part, string Text, string Concern, DateTimeOffset Since)
{
    /// <summary>Whether a measure of the run is taken in that part.</summary>
    public bool Covers(string measure, int? position) => position == Position && DummyParts.Of(measure) == Part;
}
