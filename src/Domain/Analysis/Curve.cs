using Toepan.Domain.Channels;

namespace Toepan.Domain.Analysis;

/// <summary>One curve over time, ready to be drawn.</summary>
/// <param name="Name">Plain name, short enough to stand at the line's end.</param>
/// <param name="History">Samples in the set's unit.</param>
public sealed record Curve(string Name, TimeHistory History);

/// <summary>Curves that belong on one plot.</summary>
/// <param name="Key">Key, e.g. <c>head.resultant</c>.</param>
/// <param name="Position">Seat position, or null for the vehicle.</param>
/// <param name="Unit">Unit of every curve.</param>
/// <param name="Curves">The curves; empty where none could be drawn.</param>
/// <param name="Absent">Why a curve is missing, one sentence each.</param>
public sealed record CurveSet(string Key, int? Position, string Unit, IReadOnlyList<Curve> Curves, IReadOnlyList<string> Absent);
