using System.Globalization;
using Toepan.Api;
using Toepan.Api.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Packages.Sidecars;
using Toepan.Domain.Programme;
using Toepan.Web.Components;
using Toepan.Web.Pages.Ratings;

namespace Toepan.Web.Pages.Measures;

/// <summary>The finding form: a finding as texts, and back.</summary>
public static class FindingForm
{
    public static IReadOnlyList<Choice> Kinds { get; } =
        [.. FindingWords.Kinds.Order(StringComparer.Ordinal).Select(kind => new Choice(kind, kind.Replace('-', ' ')))];

    public static IReadOnlyList<Choice> Regions { get; } = [.. FindingWords.Regions.Select(region => new Choice(region, RegionWords.Name(region)))];

    public static IReadOnlyList<Choice> Severities { get; } =
        [.. Enum.GetValues<FindingSeverity>().Select(severity => new Choice(severity.ToString(), severity.ToString().ToLowerInvariant()))];

    public static IReadOnlyList<Choice> Seats(IReadOnlyList<Occupant> occupants) =>
        [.. occupants.Select(occupant => new Choice(Text(occupant.Position), $"{Text(occupant.Position)}, {occupant.Seat}"))];

    /// <summary>A stored finding as the fields show it.</summary>
    public static IReadOnlyDictionary<string, string> Write(Finding? finding) => finding is null
        ? new Dictionary<string, string>()
        : new Dictionary<string, string>
        {
            ["kind"] = finding.Kind, ["region"] = finding.Region, ["severity"] = finding.Severity.ToString(),
            ["time"] = finding.TimeMs?.ToString("R", CultureInfo.InvariantCulture) ?? "", ["camera"] = finding.Camera ?? "",
            ["position"] = finding.Position is { } seat ? Text(seat) : "", ["note"] = finding.Note,
        };

    /// <summary>What was sent, or a sentence on what cannot be read.</summary>
    public static Outcome<FindingDraft> Read(Func<string, string> sent)
    {
        double? time = null;
        if (sent("time").Length > 0)
        {
            if (!double.TryParse(sent("time"), NumberStyles.Float, CultureInfo.InvariantCulture, out var ms))
            {
                return Failure.BadRequest($"The time is '{sent("time")}'; it is a number of ms from contact, or empty for an inspection.");
            }

            time = ms;
        }

        return Enum.TryParse<FindingSeverity>(sent("severity"), out var severity)
            ? new FindingDraft(time, sent("camera"), sent("kind"), sent("region"), severity, sent("note"), int.TryParse(sent("position"), CultureInfo.InvariantCulture, out var seat) ? seat : null)
            : Failure.BadRequest("Choose the severity.");
    }

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);
}
