using System.Globalization;

namespace Toepan.Web.Components;

/// <summary>Times and counts in words; dates are ISO 8601, clock times UTC.</summary>
public static class Days
{
    /// <summary>"today", "1 day", "12 days".</summary>
    public static string In(int days) => days switch
    {
        <= 0 => "today",
        1 => "1 day",
        _ => string.Create(CultureInfo.InvariantCulture, $"{days} days"),
    };

    /// <summary>2031-03-14.</summary>
    public static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>2031-03-14 09:26 UTC.</summary>
    public static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);

    /// <summary>"1 run", "3 runs".</summary>
    public static string Count(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");
}
