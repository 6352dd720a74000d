using System.Globalization;
using Toepan.Api.Channels;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings.Reviews;
using Toepan.Web.Components;
using Toepan.Web.Pages.Channels;
using Toepan.Web.Pages.Programme;

namespace Toepan.Web.Pages.Ratings;

/// <summary>What a signature stands for, in a few sentences a part; the run's page has all of it.</summary>
public static class ReviewEvidence
{
    public static IReadOnlyList<string> Of(ReviewPart part, TestRunView view) => part switch
    {
        ReviewPart.Conduct => [.. view.Detail.Conduct.Items.Select(Item)],
        ReviewPart.Data => Data(view),
        ReviewPart.Structure => Structure(view.Structure),
        _ => Findings([.. view.Findings.Where(kept => kept.Standing).Select(kept => kept.Finding)]),
    };

    private static string Item(ConductVerdict item) => item.Reading is { } reading
        ? string.Create(CultureInfo.InvariantCulture, $"{ConductWords.Name(item.Item)} {reading:0.###} {item.Unit}, {ConductWords.Word(item.Verdict)}{Bounds(item)}.")
        : $"{ConductWords.Name(item.Item)} {ConductWords.Word(item.Verdict)}{(item.Required ? " and counts as outside" : "")}.";

    private static string Bounds(ConductVerdict item) => item switch
    {
        { Lower: { } lower, Upper: { } upper } => string.Create(CultureInfo.InvariantCulture, $" {lower:0.###} to {upper:0.###}"),
        { Lower: { } lower } => string.Create(CultureInfo.InvariantCulture, $" {lower:0.###} or more"),
        { Upper: { } upper } => string.Create(CultureInfo.InvariantCulture, $" {upper:0.###} or less"),
        _ => "",
    };

    private static List<string> Data(TestRunView view)
    {
        var unfit = view.Detail.Channels.Where(channel => channel.Unfit is not null).ToList();
        var disagreeing = view.Detail.CrossChecks.Where(check => check.Agrees == false).ToList();
        return
        [
            $"{Days.Count(view.Detail.Channels.Count, "channel", "channels")}, {unfit.Count} unfit; {Days.Count(view.Measures.Count(measure => measure.Value is not null), "measure", "measures")} reduced, {view.Measures.Count(measure => measure.Value is null)} absent.",
            .. unfit.Select(channel => $"{channel.Channel} is unfit: {channel.Unfit}."),
            .. view.Flags.Where(flag => flag.Standing).Select(Flag),
            disagreeing.Count == 0 ? "No cross-check disagrees." : $"Cross-checks that disagree: {string.Join(", ", disagreeing.Select(check => check.Check))}.",
        ];
    }

    private static string Flag(FlagRecord record) => $"{record.Flag.Channel} {FlagWords.Decision(record.Flag)} by {record.By}: {record.Flag.Reason}";

    private static IReadOnlyList<string> Structure(StructureResult? structure) => structure switch
    {
        null => ["Nothing was measured."],
        { Absent: { } reason } => [$"No displacements: {reason}."],
        _ =>
        [
            string.Create(CultureInfo.InvariantCulture, $"{structure.References.Count} references tie the frames together, root mean square {structure.RmsMm:0.0} mm."),
            $"{Days.Count(structure.Points.Count, "point has a displacement", "points have displacements")}.",
            .. structure.References.Where(reference => reference.Moved).Select(reference => $"Reference {reference.Point} has moved and is left out of the fit."),
        ],
    };

    private static IReadOnlyList<string> Findings(IReadOnlyList<Finding> findings) => findings.Count == 0
        ? ["No finding is recorded."]
        : [.. findings.Select(finding => $"{finding.Kind}, {finding.Severity.ToString().ToLowerInvariant()}, {finding.Region}{At(finding)}: {finding.Note}")];

    private static string At(Finding finding) => finding.TimeMs is { } ms ? string.Create(CultureInfo.InvariantCulture, $" at {ms:0.#} ms") : " by inspection";
}
