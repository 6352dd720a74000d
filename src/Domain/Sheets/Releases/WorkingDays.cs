namespace Toepan.Domain.Sheets.Releases;

/// <summary>Days on which an office works: Monday to Friday, but for the holidays given.</summary>
public static class WorkingDays
{
    public static bool Is(DateOnly day, IReadOnlySet<DateOnly> holidays) =>
        day.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday) && !holidays.Contains(day);

    /// <summary>The <paramref name="count"/>th working day after a day, which itself is not counted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than one day.</exception>
    public static DateOnly After(DateOnly day, int count, IReadOnlySet<DateOnly> holidays)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        while (count > 0)
        {
            day = day.AddDays(1);
            count -= Is(day, holidays) ? 1 : 0;
        }

        return day;
    }
}
