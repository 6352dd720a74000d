namespace Toepan.Domain.Ratings.Steps;

/// <summary>What each rule of the overall level is, and what it did.</summary>
internal static class OverallSentences
{
    public static IEnumerable<RuleOutcome> Outcomes(OverallRating overall, Scheme scheme, RegionState structure) =>
        overall.Step is { } step
            ? [Worse(overall, scheme, step), WorstRegion(overall, step), OneStep(overall, scheme, step), .. Holds(scheme, structure, step.Tied)]
            : Holds(scheme, structure, null);

    private static RuleOutcome Worse(OverallRating overall, Scheme scheme, OverallStep step)
    {
        var life = $"{scheme.Overall.Life.Name} together have an excess risk of {Figures.Percent(overall.LifeExcess!.Value)}, {overall.Life.Protection()}";
        var legs = overall.LegsExcess is { } excess
            ? $"{overall.LegsName} have one of {Figures.Percent(excess)}, {overall.Legs.Protection()}"
            : $"the worst of {overall.LegsName} is {overall.Legs.Protection()}";
        return new("overall.worse", true, false, null, null, $"{Sentence.Start(life)}; {legs}. The worse of the two is {step.Base.Protection()}.");
    }

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
