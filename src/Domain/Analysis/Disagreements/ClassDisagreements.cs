using Toepan.Domain.Analysis.Explore;
using Toepan.Domain.Measures;

namespace Toepan.Domain.Analysis.Disagreements;

/// <summary>
/// Runs of one class that contradict themselves or their class. Rules (common practice, no source): a leg load more than 2.5 studentized residuals off its line
/// over the footwell's displacement; the logarithm of left over right beyond the outer fences of the class and at least a factor of 1.25 from its
/// median, where the greater side is at least half the class median; a figure beyond the outer fences and at least a quarter off the median. Each needs eight runs.
/// </summary>
public static class ClassDisagreements
{
    private const string Footwell = "structure.footwell.rearward";
    private const double FarOffTheLine = 2.5;
    private const double WorthComparing = 0.5;
    private const double LeastFactor = 1.25;
    private const double WorthNaming = 0.25;
    private const int MostNamed = 5;

    private static readonly string[] LegLoads =
        ["tibia.left.upper.index", "tibia.left.lower.index", "tibia.right.upper.index", "tibia.right.lower.index", "tibia.left.compression", "tibia.right.compression"];

    private static readonly (string Left, string Right)[] Pairs =
    [
        ("femur.left.compression", "femur.right.compression"), ("tibia.left.compression", "tibia.right.compression"),
        ("tibia.left.upper.index", "tibia.right.upper.index"), ("tibia.left.lower.index", "tibia.right.lower.index"), ("foot.left.a3ms", "foot.right.a3ms"),
    ];

    /// <summary>Every measure the rules look at, apart from outliers, which look at all that are given.</summary>
    public static IReadOnlyList<string> Needed { get; } = [Footwell, "head.hic15", .. LegLoads, .. Pairs.SelectMany(pair => new[] { pair.Left, pair.Right }).Except(LegLoads)];

    /// <summary>By kind, the farthest out first.</summary>
    public static IReadOnlyList<Disagreement> Of(IReadOnlyList<ClassRun> runs) =>
    [
        .. FilmDisagreements.Of(runs).Concat(LegLoads.SelectMany(load => Predicted(runs, load))).Concat(Pairs.SelectMany(pair => Sided(runs, pair.Left, pair.Right))).Concat(Outliers(runs))
            .OrderBy(found => found.Kind).ThenByDescending(found => found.Weight).ThenBy(found => found.Test, StringComparer.Ordinal),
    ];

    private static IEnumerable<Disagreement> Predicted(IReadOnlyList<ClassRun> runs, string load)
    {
        var held = runs.Where(run => run.Values.ContainsKey(Footwell) && run.Values.ContainsKey(load)).ToList();
        var (x, y) = (held.Select(run => run.Values[Footwell]).ToArray(), held.Select(run => run.Values[load]).ToArray());
        if (Residuals.Of(x, y) is not { } fit)
        {
            yield break;
        }

        for (var i = 0; i < held.Count; i++)
        {
            if (Math.Abs(fit.Studentized[i]) > FarOffTheLine)
            {
                var expected = fit.Line.Intercept + (fit.Line.Slope * x[i]);
                yield return new(
                    DisagreementKind.Structure, held[i].Test, load,
                    $"With {N(x[i])} mm of the footwell lost, the class of {held.Count} runs has {Title(load)} near {N(expected)}{Unit(load)}; here it is {N(y[i])}{Unit(load)}, {N(Math.Abs(fit.Studentized[i]))} standard deviations {(fit.Studentized[i] > 0 ? "more" : "less")}.",
                    Math.Abs(fit.Studentized[i]));
            }
        }
    }

    private static IEnumerable<Disagreement> Sided(IReadOnlyList<ClassRun> runs, string left, string right)
    {
        var held = runs.Where(run => run.Values.GetValueOrDefault(left) > 0 && run.Values.GetValueOrDefault(right) > 0).ToList();
        if (Fences.Of([.. held.Select(run => Ratio(run, left, right))]) is not { } fences)
        {
            yield break;
        }

        var usual = SampleStatistics.Of([.. held.Select(run => Math.Max(run.Values[left], run.Values[right]))]).Median!.Value;
        foreach (var run in held.Where(run => fences.Excludes(Ratio(run, left, right)) && Math.Abs(Ratio(run, left, right) - fences.Median) > Math.Log(LeastFactor) && Math.Max(run.Values[left], run.Values[right]) >= WorthComparing * usual))
        {
            yield return new(
                DisagreementKind.Sides, run.Test, left,
                $"{Title(left, capital: true)} is {N(run.Values[left])}{Unit(left)} against {N(run.Values[right])}{Unit(right)} on the right: left over right is {N(Math.Exp(Ratio(run, left, right)))}, in the class usually {N(Math.Exp(fences.Median))}.",
                fences.Distance(Ratio(run, left, right)));
        }
    }

    // One line a run, its farthest figures first. Risks only restate loads; a figure near the median in size is no news however alike the others are.
    private static IEnumerable<Disagreement> Outliers(IReadOnlyList<ClassRun> runs)
    {
        var codes = runs.SelectMany(run => run.Values.Keys).Where(code => !code.StartsWith("risk.", StringComparison.Ordinal)).Distinct().Order(StringComparer.Ordinal);
        var fences = codes.Select(code => (Code: code, Of: Fences.Of([.. runs.Where(run => run.Values.ContainsKey(code)).Select(run => run.Values[code])])))
            .Where(pair => pair.Of is not null).ToList();
        foreach (var run in runs)
        {
            var far = fences.Where(pair => run.Values.TryGetValue(pair.Code, out var value) && pair.Of!.Excludes(value) && Math.Abs(value - pair.Of.Median) > WorthNaming * Math.Abs(pair.Of.Median))
                .OrderByDescending(pair => pair.Of!.Distance(run.Values[pair.Code])).ToList();
            if (far.Count == 0)
            {
                continue;
            }

            var named = far.Take(MostNamed).Select(pair => $"{Title(pair.Code)} {N(run.Values[pair.Code])}{Unit(pair.Code)} (half of the class within {N(pair.Of!.Spread)} about {N(pair.Of.Median)})");
            yield return new(
                DisagreementKind.Outlier, run.Test, far[0].Code, $"Far from the rest of the class: {string.Join(", ", named)}{(far.Count > MostNamed ? $", and {far.Count - MostNamed} more" : "")}.",
                far[0].Of!.Distance(run.Values[far[0].Code]));
        }
    }

    private static double Ratio(ClassRun run, string left, string right) => Math.Log(run.Values[left] / run.Values[right]);

    private static string N(double value) => ExploreWords.Number(value);

    private static string Unit(string code) => MeasureCatalogue.Find(code)?.Unit is { Length: > 0 } unit && unit != "probability" ? $" {unit}" : "";

    private static string Title(string code, bool capital = false)
    {
        var title = MeasureCatalogue.Title(code);
        return capital || (title.Length > 1 && char.IsUpper(title[1])) ? title : char.ToLowerInvariant(title[0]) + title[1..];
    }
}
