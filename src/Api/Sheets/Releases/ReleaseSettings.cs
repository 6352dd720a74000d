namespace Toepan.Api.Sheets.Releases;

/// <summary>The programme's own numbers on the way to the public; section <c>Releases</c> of the configuration.</summary>
public sealed class ReleaseSettings
{
    public const string Section = "Releases";

    /// <summary>Working days the manufacturer has to answer.</summary>
    public int ReplyWorkingDays { get; set; } = 10;

    /// <summary>Days, yyyy-MM-dd, on which nobody works.</summary>
    public IList<DateOnly> Holidays { get; } = [];

    /// <summary>Embargoes end on whole multiples of this, and no cache keeps a public answer past the next one.</summary>
    public TimeSpan Step { get; set; } = TimeSpan.FromMinutes(1);
}
