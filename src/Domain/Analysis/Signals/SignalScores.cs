namespace Toepan.Domain.Analysis.Signals;

/// <summary>How well one signal agrees with another: four scores and their weighted sum, each from 0 to 1.</summary>
/// <param name="FromS">First sample compared, s.</param>
/// <param name="ToS">Last sample compared, s.</param>
/// <param name="Samples">Number of samples compared.</param>
/// <param name="ShiftS">By how much the compared signal is later than the reference, s; negative = earlier.</param>
/// <param name="Corridor">Z: how much of it lies inside the corridors about the reference.</param>
/// <param name="Phase">EP: how little it is shifted.</param>
/// <param name="Magnitude">EM: how little the values differ once shift and local stretching are taken out.</param>
/// <param name="Slope">ES: how little the slopes differ once the shift is taken out.</param>
/// <param name="Overall">R = 0.4 Z + 0.2 EP + 0.2 EM + 0.2 ES.</param>
/// <param name="Rank">1 (R above 0.94) to 4 (R up to 0.58); a number and no word.</param>
public sealed record SignalScores(
    double FromS, double ToS, int Samples, double ShiftS, double Corridor, double Phase, double Magnitude, double Slope, double Overall, int Rank);

/// <summary>Scores, or why there are none.</summary>
public sealed record SignalAnswer(SignalScores? Scores, string? Absent);
