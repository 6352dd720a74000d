namespace Toepan.Domain.Programme.Equipment;

/// <summary>A check of one part of a dummy after a test.</summary>
/// <param name="Id">Number.</param>
/// <param name="Dummy">Number of the dummy among the equipment.</param>
/// <param name="Part">Part checked.</param>
/// <param name="Passed">Whether it held its corridor.</param>
/// <param name="On">Day of the check.</param>
/// <param name="RecordedAt">When it was entered.</param>
public sealed record DummyCheck(long Id, long Dummy, DummyPart Part, bool Passed, DateOnly On, DateTimeOffset RecordedAt);

/// <summary>Which runs a failed check puts in doubt.</summary>
public static class DummyCheckRules
{
    /// <summary>
    /// The failed checks that put a part of a dummy in doubt for a run of that day: those on or after the day with no passed check of the part between,
    /// the day itself included: a check is made after the test, so a pass on the day of the run speaks for the run. The earliest of each part.
    /// </summary>
    public static IReadOnlyList<DummyCheck> InDoubt(IEnumerable<DummyCheck> checks, DateOnly day) =>
    [
        .. checks.Where(check => check.On >= day).GroupBy(check => check.Part).OrderBy(part => part.Key)
            .Select(part => part.OrderBy(check => check.On).ThenBy(check => check.Id).First())
            .Where(first => !first.Passed),
    ];
}
