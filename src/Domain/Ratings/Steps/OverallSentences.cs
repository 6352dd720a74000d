namespace Toepan.Domain.Ratings.Steps;

/// <summary>What each rule of the overall level is, and what it did.</summary>
internal static class OverallSentences
{
    public static IEnumerable<RuleOutcome> Outcomes(OverallRating overall, Scheme scheme, RegionState structure) =>
        overall.Step is { } step
            ? [Worse(overall, step), WorstRegion(overall, step), OneStep(overall, scheme, step), .. Holds(scheme, structure, step.Tied)]
            : Holds(scheme, structure, null);

    private static RuleOutcome Worse(OverallRating overall, OverallStep step)
    {
        var life = Part(overall.LifeRule!, overall.LifeExcess, overall.Life, "together have an excess risk of");
        var text = overall.LegsRule is { } rule
            ? $"{Sentence.Start(life)}; {Part(rule, overall.LegsExcess, overall.Legs, overall.LifeExcess is null ? "together have an excess risk of" : "have one of")}. The worse of the two is {step.Base.Protection()}."
            : $"{Sentence.Start(life)}.";
        return new("overall.worse", true, false, null, null, text);
    }

    private static string Part(PartRule rule, double? excess, ProtectionLevel level, string have) => (excess, rule.WorstOf.Count) switch
    {
        ({ } e, 0) => $"{rule.Name} {have} {Figures.Percent(e)}, {level.Protection()}",
        ({ } e, _) => $"the worse of a joint excess risk of {Figures.Percent(e)} and the worst level beside it in {rule.Name} is {level.Protection()}",
        _ => $"the worst of {rule.Name} is {level.Protection()}",
    };

    private static RuleOutcome WorstRegion(OverallRating overall, OverallStep step)
    {
        var worst = overall.Worst!.Level!.Value;
        var fired = step.Base > worst;
        var text = fired
            ? $"The overall level is never worse than the worst region, which is {worst.Protection()}: it rises from {step.Base.Protection()}."
            : $"The overall level is not worse than the worst region ({overall.Worst.Name}, {worst.Protection()}).";
        return new("overall.worst-region", fired, false, null, null, text);
    }

    private static RuleOutcome OneStep(OverallRating overall, Scheme scheme, OverallStep step)
    {
        var worst = overall.Worst!;
        var fired = step.Tied > step.Base;
        var steps = scheme.Overall.StepsBetterThanWorst == 1 ? "one step" : $"{scheme.Overall.StepsBetterThanWorst} steps";
        var text = $"The overall level is at most {steps} better than the worst region ({worst.Name}, {worst.Level!.Value.Protection()})"
            + (fired ? $": it falls from {step.Base.Protection()} to {step.Tied.Protection()}." : ", which changes nothing.");
        return new("overall.one-step", fired, fired, null, null, text);
    }

    private static IEnumerable<RuleOutcome> Holds(Scheme scheme, RegionState structure, ProtectionLevel? before)
    {
        foreach (var hold in scheme.Structure.Holds)
        {
            var fired = structure.Level == hold.When;
            var changed = fired && before < hold.AtBest;
            var rule = $"A structure of {hold.When.Protection()} holds the overall level to {hold.AtBest.Protection()} at best";
            var effect = changed ? $"; it would otherwise be {before!.Value.Protection()}."
                : fired ? before is null ? "; the overall level is not rated." : ", which changes nothing."
                : structure.Level is { } level ? $"; it is {level.Protection()}." : "; it is not rated.";
            yield return new(hold.Rule, fired, changed, null, null, rule + effect);
        }
    }
}
