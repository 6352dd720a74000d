using Toepan.Api.Packages.Attachments;
using Toepan.Web.Components;

namespace Toepan.Web.Pages.Packages;

/// <summary>What is said of attachments, in words for pages.</summary>
public static class AttachmentText
{
    public static IReadOnlyList<Choice> Kinds { get; } = [.. Enum.GetValues<AttachmentKind>().Select(kind => new Choice(Word(kind), Word(kind)))];

    public static IReadOnlyList<Choice> Moments { get; } =
        [.. Enum.GetValues<CrashMoment>().Select(moment => new Choice(Word(moment), $"{Word(moment)} the crash"))];

    /// <summary>Before or after, camera and time, as far as they are known.</summary>
    public static string When(AttachmentFacts facts) => string.Join(", ", new[]
    {
        facts.Moment is { } moment ? $"{Word(moment)} the crash" : null, facts.Camera is { } camera ? $"camera {camera}" : null,
        facts.TakenAt is { } at ? Days.Time(at) : null,
    }.Where(part => part is not null));

    public static string Size(long bytes) => bytes switch
    {
        < 1 << 20 => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Math.Max(1, bytes / 1024)} KiB"),
        _ => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{bytes / 1048576.0:F1} MiB"),
    };

    public static string Word<T>(T member)
        where T : struct, Enum => Toepan.Api.WordNaming.Instance.ConvertName(member.ToString());

    /// <summary>What was done, in a few words.</summary>
    public static string Act(AttachmentAct act) => act switch
    {
        AttachmentAct.MarkedForSheet => "chosen for the sheet",
        AttachmentAct.TakenOffSheet => "taken off the sheet",
        _ => Word(act),
    };

    /// <summary>Page of whatever an attachment belongs to.</summary>
    public static string SubjectPage(AttachmentSubject subject) =>
        subject.Test is { } test ? $"/tests/{test}" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"/specimens/{subject.Specimen}");

    public static string SubjectName(AttachmentSubject subject) =>
        subject.Test ?? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Specimen {subject.Specimen}");
}
