namespace Toepan.Domain.Measures;

/// <summary>A labelled paragraph of a measure's explanation: formula, window, edge cases, source, confidence, checks.</summary>
public sealed record MeasureHelpNote(string Label, string Text);

/// <summary>What stands behind a figure on screen: the doc comment of the code that computed it.</summary>
/// <param name="Entry">The measure.</param>
/// <param name="Summary">What it is, in a sentence.</param>
/// <param name="Notes">Formula, window, edge cases, source, confidence, checks: those that were written, in this order.</param>
/// <param name="Limit">Limits by dummy with their source, or null where there is none.</param>
public sealed record MeasureHelp(MeasureEntry Entry, string Summary, IReadOnlyList<MeasureHelpNote> Notes, string? Limit);
