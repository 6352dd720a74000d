using System.Globalization;

namespace Toepan.Domain.Sheets.Releases;

/// <summary>An instant of release as somebody gave it, or why it cannot be one.</summary>
/// <param name="At">The instant; null where refused.</param>
/// <param name="Refusal">Why not; null where it stands.</param>
public sealed record EmbargoReading(DateTimeOffset? At, string? Refusal);

/// <summary>Wall-clock time in a named zone → the instant, and back into words with the zone and UTC.</summary>
public static class EmbargoTime
{
    private const string LocalFormat = "yyyy-MM-dd'T'HH:mm";
    private const string Spoken = "yyyy-MM-dd HH:mm";

    /// <param name="local">Wall-clock time, e.g. 2031-03-14T09:00.</param>
    /// <param name="zone">IANA time zone, e.g. Europe/London, or UTC.</param>
    public static EmbargoReading Read(string local, string zone)
    {
        if (!DateTime.TryParseExact(local, LocalFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
        {
            return new(null, $"'{local}' is no time of day as 2031-03-14T09:00.");
        }

        if (!TimeZoneInfo.TryFindSystemTimeZoneById(zone, out var found))
        {
            return new(null, $"There is no time zone '{zone}'. Give its IANA name, e.g. Europe/London, or UTC.");
        }

        if (found.IsInvalidTime(time))
        {
            return new(null, $"{time.ToString(Spoken, CultureInfo.InvariantCulture)} does not exist in {zone}: the clocks go forward over it.");
        }

        return found.IsAmbiguousTime(time)
            ? new(null, $"{time.ToString(Spoken, CultureInfo.InvariantCulture)} happens twice in {zone}, when the clocks go back. Give the time in UTC.")
            : new(new DateTimeOffset(TimeZoneInfo.ConvertTimeToUtc(time, found), TimeSpan.Zero), null);
    }

    /// <summary>"2031-06-14 09:00 Europe/London (08:00 UTC)"; the day is repeated where it differs.</summary>
    public static string Text(DateTimeOffset at, string zone)
    {
        var utc = at.UtcDateTime;
        if (zone == "UTC" || !TimeZoneInfo.TryFindSystemTimeZoneById(zone, out var found))
        {
            return $"{utc.ToString(Spoken, CultureInfo.InvariantCulture)} UTC";
        }

        var local = TimeZoneInfo.ConvertTimeFromUtc(utc, found);
        var other = utc.ToString(local.Date == utc.Date ? "HH:mm" : Spoken, CultureInfo.InvariantCulture);
        return $"{local.ToString(Spoken, CultureInfo.InvariantCulture)} {zone} ({other} UTC)";
    }
}
