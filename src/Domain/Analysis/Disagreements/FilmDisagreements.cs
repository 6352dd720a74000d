using Toepan.Domain.Measures.Checks;

namespace Toepan.Domain.Analysis.Disagreements;

/// <summary>Instruments against film and inspection, run by run; the airbag's part against the class.</summary>
internal static class FilmDisagreements
{
    private const string Load = "head.hic15";
    private static readonly string[] Bag = ["airbag-late", "airbag-missed"];
    private static readonly string[] Hard = ["airbag-late", "airbag-missed", "head-strike", "wheel-contact"];

    public static IEnumerable<Disagreement> Of(IReadOnlyList<ClassRun> runs)
    {
        var loads = SampleStatistics.Of([.. runs.Where(run => run.Values.ContainsKey(Load)).Select(run => run.Values[Load])]);
        foreach (var run in runs.Where(run => !run.Summary))
        {
            foreach (var check in run.Checks.Where(check => check is { Agrees: false, Check: HeadContactBalance.UnfeltCheck or HeadContactBalance.UnseenCheck }))
            {
                yield return new(
                    DisagreementKind.Film, run.Test, "head.peak",
                    check.Check == HeadContactBalance.UnfeltCheck
                        ? $"Film shows the head striking something, but the balance of forces on the head shows no contact then. {check.Note}"
                        : $"The balance of forces shows something touching the head, but no finding names it. {check.Note}", 1);
            }

            if (loads.Count >= Fences.LeastValues && run.Values.TryGetValue(Load, out var load) && Airbag(run, load, loads) is { } airbag)
            {
                yield return airbag;
            }
        }
    }

    private static Disagreement? Airbag(ClassRun run, double load, SampleStatistics loads)
    {
        if (load <= loads.LowerQuartile && run.Findings.FirstOrDefault(finding => Bag.Contains(finding.Kind)) is { } late)
        {
            return new(
                DisagreementKind.Film, run.Test, Load,
                $"A finding says '{late.Kind.Replace('-', ' ')}', but the head load is among the lowest quarter of the class: HIC15 {Figure(load)}, median {Figure(loads.Median!.Value)}.",
                loads.Median.Value / Math.Max(load, 1));
        }

        return load >= loads.UpperQuartile && load > 2 * loads.Median && !run.Findings.Any(finding => Hard.Contains(finding.Kind))
            ? new(
                DisagreementKind.Film, run.Test, Load,
                $"The head load is more than twice the median of the class (HIC15 {Figure(load)}, median {Figure(loads.Median!.Value)}), but film and inspection name nothing that the head met.",
                load / Math.Max(loads.Median.Value, 1))
            : null;
    }

    private static string Figure(double value) => Explore.ExploreWords.Number(value);
}
