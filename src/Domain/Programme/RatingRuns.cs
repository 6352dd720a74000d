namespace Toepan.Domain.Programme;

/// <summary>A run as far as it can rate its vehicle.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Date">Date of the run.</param>
/// <param name="Valid">Whether every conduct item holds, or a reviewer accepted the run with a reason.</param>
/// <param name="StepsFromBest">Overall level counted from the best, 0 = best; null where it is not rated.</param>
public sealed record RatingRun(string Test, DateOnly Date, bool Valid, int? StepsFromBest);

/// <summary>Which run rates a vehicle.</summary>
public static class RatingRuns
{
    /// <summary>
    /// The first valid, rated run rates the vehicle. A later valid run takes its place only where it came out lower: both are published and the
    /// lower rates. So nobody gains by repeating a valid run. Order: date, then test code. Null where no run is valid and rated.
    /// </summary>
    public static string? Of(IEnumerable<RatingRun> runs) => runs
        .Where(run => run is { Valid: true, StepsFromBest: not null })
        .OrderByDescending(run => run.StepsFromBest)
        .ThenBy(run => run.Date)
        .ThenBy(run => run.Test, StringComparer.Ordinal)
        .FirstOrDefault()?.Test;
}
