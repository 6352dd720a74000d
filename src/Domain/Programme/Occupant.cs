namespace Toepan.Domain.Programme;

/// <summary>One dummy in one seat of one test run.</summary>
/// <param name="Position">Seat position by ISO/TS 13499: 1 front left, 2 front centre, 3 front right, 4–6 second row, 7–9 third row.</param>
/// <param name="Seat">What the seat is for, as the laboratory wrote it: <c>driver</c>, <c>passenger</c>, …</param>
/// <param name="Dummy">The dummy type in that seat.</param>
public sealed record Occupant(int Position, string Seat, DummyType Dummy);
