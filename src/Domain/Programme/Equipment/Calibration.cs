using System.Globalization;

namespace Toepan.Domain.Programme.Equipment;

/// <summary>One calibration of a piece of equipment.</summary>
/// <param name="On">Day it was done.</param>
/// <param name="DueOn">Last day it holds.</param>
/// <param name="Certificate">Number of the certificate.</param>
public sealed record Calibration(DateOnly On, DateOnly DueOn, string Certificate)
{
    /// <summary>
    /// Why the equipment was not in date on a day, or null: the latest calibration done by that day must reach it, the day itself included.
    /// Common practice, no source.
    /// </summary>
    public static string? Fault(IEnumerable<Calibration> calibrations, DateOnly day)
    {
        var last = calibrations.Where(one => one.On <= day).MaxBy(one => (one.On, one.DueOn));
        return last is null ? $"has no calibration on record from before {Text(day)}"
            : last.DueOn < day ? $"was due on {Text(last.DueOn)} and used on {Text(day)}"
            : null;
    }

    private static string Text(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
