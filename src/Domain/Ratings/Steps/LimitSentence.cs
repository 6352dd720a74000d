using Toepan.Domain.Measures;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>What a limit is, and what it did.</summary>
internal sealed class LimitSentence(Scheme scheme, LimitRule limit, Measure? measure)
{
    private readonly string word = Sentence.Start(scheme.WordOf(limit.Measure));

    public string Text(RegionState state, bool fired, bool changed)
    {
        if (measure?.Value is { } value)
        {
            var (shown, bound) = Figures.Apart(value, limit.Limit, limit.Unit);
            return fired
                ? $"{word} is {shown}, over its limit of {bound} ({limit.Source}){Effect(state, changed)}"
                : $"{word} is {shown}, within its limit of {bound} ({limit.Source}).";
        }

        var limitText = Figures.Of(limit.Limit, limit.Unit);
        return fired
            ? $"{word} is at least {Figures.Of(measure!.Bounds!.AtLeast!.Value, limit.Unit)}, over its limit of {limitText} ({limit.Source}){Effect(state, changed)}"
            : $"{word} could not be held against its limit of {limitText} ({limit.Source}): {measure?.Absent ?? "not measured"}.";
    }

    private string Effect(RegionState state, bool changed)
    {
        var rule = $": it holds the {state.Name} to {limit.AtBest.Protection()} at best";
        return (state.Level, changed) switch
        {
            (null, _) => $"{rule}; the {state.Name} is not rated.",
            ({ } before, true) => $"{rule}; it would otherwise be {before.Protection()}.",
            _ => $"{rule}, which changes nothing.",
        };
    }
}
