using Toepan.Domain.Packages;

namespace Toepan.Domain.Sheets;

/// <summary>Facts → <see cref="SheetDocument"/>. Pure: the same facts and texts give the same document.</summary>
public static class SheetComposer
{
    /// <summary>The document in every language this build carries.</summary>
    public static SheetDocument Compose(SheetFacts facts) => Compose(facts, SheetTexts.All);

    /// <param name="languages">Texts, the language that others fall back to first.</param>
    public static SheetDocument Compose(SheetFacts facts, IReadOnlyList<SheetTexts> languages)
    {
        var regions = SheetRegions.Of(facts);
        var figures = SheetFigures.Of(facts, regions);
        return new()
        {
            Vehicle = facts.Vehicle,
            Test = facts.Test,
            Runs = facts.Runs,
            Overall = facts.Rating.Overall,
            NotForRelease = !facts.Rating.Valid ? "invalid" : facts.Rating.Overall is null ? "notRated" : null,
            Space = [.. facts.Structure.Points.Select(p => new SheetPoint(p.Point, p.Before.X, p.Before.Z, p.After.X, p.After.Z, p.Rearward, p.Upward, p.Uncertainty))],
            Regions = regions,
            Findings = Findings(facts),
            Holds = facts.Holds,
            Method = facts.Method,
            Figures = figures,
            Texts = [.. languages.Select(texts => SheetTextComposer.Compose(facts, regions, new SheetWriter(texts, figures, facts.Wordings)))],
        };
    }

    private static List<SheetFinding> Findings(SheetFacts facts) =>
    [
        .. facts.Findings.Where(finding => finding.Severity != FindingSeverity.Note && SheetTexts.English.Knows($"finding.{finding.Kind}"))
            .OrderByDescending(finding => finding.Severity)
            .Select(finding => new SheetFinding(finding.Kind, finding.Severity == FindingSeverity.Severe ? "severe" : "concern"))
            .DistinctBy(finding => finding.Kind),
    ];
}
