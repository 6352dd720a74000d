using Toepan.Domain.Sheets.Releases;
using Xunit;

namespace Toepan.Domain.Tests.Sheets.Releases;

/// <summary>Expected instants by the rules of the zones in the IANA time zone database (Europe/London: last Sundays of March and October, 01:00 UTC).</summary>
public sealed class EmbargoTimeTests
{
    [Theory]
    [InlineData("2031-06-14T09:00", "Europe/London", 8)]
    [InlineData("2031-01-14T09:00", "Europe/London", 9)]
    [InlineData("2031-06-14T09:00", "UTC", 9)]
    public void Read_TimeOfAZone_IsTheInstant(string local, string zone, int utcHour) =>
        Assert.Equal(utcHour, EmbargoTime.Read(local, zone).At!.Value.UtcDateTime.Hour);

    [Theory]
    [InlineData("2031-03-30T01:30", "Europe/London", "does not exist")]
    [InlineData("2031-10-26T01:30", "Europe/London", "happens twice")]
    [InlineData("2031-03-30T01:30", "Nowhere/Land", "no time zone")]
    [InlineData("soon", "UTC", "no time of day")]
    public void Read_NoSuchTime_SaysWhy(string local, string zone, string says)
    {
        var reading = EmbargoTime.Read(local, zone);

        Assert.Null(reading.At);
        Assert.Contains(says, reading.Refusal, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2031-06-14T08:00Z", "Europe/London", "2031-06-14 09:00 Europe/London (08:00 UTC)")]
    [InlineData("2031-06-14T22:00Z", "Asia/Tokyo", "2031-06-15 07:00 Asia/Tokyo (2031-06-14 22:00 UTC)")]
    [InlineData("2031-06-14T08:00Z", "UTC", "2031-06-14 08:00 UTC")]
    public void Text_Instant_NamesZoneAndUtc(string at, string zone, string expected) =>
        Assert.Equal(expected, EmbargoTime.Text(DateTimeOffset.Parse(at, System.Globalization.CultureInfo.InvariantCulture), zone));
}
