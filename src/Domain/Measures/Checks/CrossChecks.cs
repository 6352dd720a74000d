using System.Globalization;
using Toepan.Domain.Packages;

namespace Toepan.Domain.Measures.Checks;

/// <summary>Every cross-check before belief: each shown with value, expectation and verdict; a problem where it disagrees, never a stop.</summary>
public static class CrossChecks
{
    /// <summary>In reporting order. The head-contact balance stands apart: it also yields intervals.</summary>
    public static IReadOnlyList<ICrossCheck> All { get; } =
    [
        new VelocityRatio(), new LeftRightVelocity(), new PulseOnset(), new PelvisVelocity(), new RedundantPeaks(), new FemurBalance(), new BeltTension(),
        new RecordedResultant(),
    ];

    /// <summary>The problem of a check that disagrees, or null.</summary>
    public static Problem? ProblemOf(CrossCheck check)
    {
        if (check.Agrees is not false)
        {
            return null;
        }

        var value = check.Value is { } found ? $"{found.ToString("G6", CultureInfo.InvariantCulture)} {check.Unit}".TrimEnd() : "no value";
        var where = check.Position is { } position ? $"seat {position.ToString(CultureInfo.InvariantCulture)}: " : string.Empty;
        var severity = check.Check == HeadContactBalance.UnseenCheck ? ProblemSeverity.Note : ProblemSeverity.Warning;
        return new(
            severity, "check." + check.Check, $"{where}{check.Check} is {value}, expected: {check.Expectation}. {check.Note}".TrimEnd(), Value: value, Limit: check.Expectation);
    }

    /// <summary>A verdict with its value rounded; a value that is not finite is none.</summary>
    internal static CrossCheck Judge(string check, int? position, double value, string unit, string expectation, bool agrees, string note) =>
        double.IsFinite(value)
            ? new(check, position, Digits.Round12(value), unit, expectation, agrees, note)
            : new(check, position, null, unit, expectation, null, note);

    /// <summary>A check that could not be made.</summary>
    internal static CrossCheck NotCheckable(string check, int? position, string unit, string expectation, string reason) =>
        new(check, position, null, unit, expectation, null, reason);
}
