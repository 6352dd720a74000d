using System.Globalization;
using Toepan.Domain.Sheets.Releases;
using Xunit;

namespace Toepan.Domain.Tests.Sheets.Releases;

/// <summary>Expected days by numpy.busday_offset (roll backward from the day itself, weekmask Monday to Friday).</summary>
public sealed class WorkingDaysTests
{
    [Theory]
    [InlineData("2031-03-14", 10, "", "2031-03-28")]
    [InlineData("2031-04-09", 10, "2031-04-11 2031-04-14", "2031-04-25")]
    [InlineData("2031-12-20", 1, "", "2031-12-22")]
    [InlineData("2031-12-19", 10, "2031-12-25 2031-12-26 2032-01-01", "2032-01-07")]
    public void After_DayAndHolidays_IsWhatNumpyCounts(string day, int count, string holidays, string expected) =>
        Assert.Equal(Day(expected), WorkingDays.After(Day(day), count, holidays.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Day).ToHashSet()));

    [Fact]
    public void After_NoDays_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => WorkingDays.After(Day("2031-03-14"), 0, new HashSet<DateOnly>()));

    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
