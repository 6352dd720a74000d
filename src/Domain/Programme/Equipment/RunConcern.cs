namespace Toepan.Domain.Programme.Equipment;

/// <summary>Something about the equipment of a run that an approval must accept explicitly, with a reason.</summary>
/// <param name="Key">What it is about, the same as long as it is the same concern, e.g. <c>calibration/12/2031-03-14</c>.</param>
/// <param name="Text">What speaks against the run, in a sentence without a full stop.</param>
/// <param name="Since">Since when it is known.</param>
public sealed record RunConcern(string Key, string Text, DateTimeOffset Since);
