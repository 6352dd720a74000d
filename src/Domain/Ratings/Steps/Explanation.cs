using System.Globalization;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>The rating in plain sentences: overall first, then its rules, the regions with driver and margins, the structure, what fired.</summary>
internal sealed class Explanation(Scheme scheme, RatingInputs inputs, Occupant rated)
{
    public IEnumerable<string> Sentences(
        OverallRating overall, IReadOnlyList<RegionState> regions, RegionState structure, IReadOnlyList<ProtectionLevel> possible)
    {
        yield return Overall(overall);
        if (possible.Count > 0)
        {
            yield return Possible(overall, possible);
        }

        if (!inputs.Valid)
        {
            yield return "The run is not valid: its levels are shown for comparison and are never released.";
        }

        foreach (var outcome in overall.Outcomes.Where(outcome => outcome.Fired))
        {
            yield return outcome.Text;
        }

        foreach (var sentence in regions.Where(state => state.Position == rated.Position).SelectMany(Region))
        {
            yield return sentence;
        }

        foreach (var sentence in Region(structure))
        {
            yield return sentence;
        }

        foreach (var sentence in regions.Where(state => state.Position != rated.Position).SelectMany(Beside))
        {
            yield return sentence;
        }
    }

    private static string Overall(OverallRating overall)
    {
        if (overall.Step is not { } step)
        {
            return $"The overall level is not rated: {overall.NotRated}.";
        }

        var because = step switch
        {
            _ when step.Final > step.Structured => "a finding holds it there",
            _ when step.Structured > step.Tied => "the structure holds it there",
            _ when step.Tied != step.Base => $"the worst region, {overall.Worst!.Name}, ties it there",
            _ when overall.LegsRule is null || overall.Life > overall.Legs => $"it follows from {overall.LifeRule!.Name}",
            _ when overall.Legs > overall.Life => $"it follows from {overall.LegsRule.Name}",
            _ => $"{overall.LifeRule!.Name} agree on it with {overall.LegsRule.Name}",
        };
        return $"Overall: {step.Final.Full()}; {because}.";
    }

    private static string Possible(OverallRating overall, IReadOnlyList<ProtectionLevel> possible)
    {
        var what = overall.Step is null ? "missing values" : "values known only as bounds";
        return possible.Count == 1
            ? $"Whatever the {what} are, the overall level would be {possible[0].Protection()}."
            : $"The {what} would decide between {Sentence.And([.. possible.Select(level => level.Protection())])}.";
    }

    private IEnumerable<string> Beside(RegionState state)
    {
        var seat = inputs.Occupants.First(occupant => occupant.Position == state.Position).Seat;
        return Region(state).Select(text => string.Create(CultureInfo.InvariantCulture, $"Beside the rating, seat {state.Position} ({seat}): {text}"));
    }

    private IEnumerable<string> Region(RegionState state)
    {
        yield return state.Level is { } level
            ? $"{Sentence.Start(state.Name)}: {level.Protection()}, decided by {Decided(state)}.{Margins(state, level)}"
            : $"{Sentence.Start(state.Name)}: not rated; {state.NotRated}.";
        foreach (var outcome in state.Outcomes.Where(outcome => outcome.Fired))
        {
            yield return outcome.Text;
        }
    }

    private string Decided(RegionState state)
    {
        var driver = state.Driver!;
        var detail = state.Behind is { } behind
            ? $", from {scheme.WordOf(behind.Code)} of {Figures.Of(behind.Value, behind.Unit)}"
            : state.Excess is { } excess ? $" (excess risk {Figures.Percent(excess)})" : "";
        var uncertainty = driver.Uncertainty is { } u ? $" ± {Figures.Of(u, driver.Unit)}" : "";
        var where = driver.Detail is { } at && state.Behind is null ? $", {at}" : "";
        return $"{scheme.WordOf(driver.Code)} of {Figures.Of(driver.Value, driver.Unit)}{uncertainty}{where}{detail}";
    }

    private string Margins(RegionState state, ProtectionLevel level)
    {
        var parts = new List<string>();
        var margin = state.Driver!.Margin(level, state.Capped);
        if (margin.ToBetter is { } less)
        {
            parts.Add($"{Far(state, less, level - 1, "lower")} would give {(level - 1).Protection()}{Besides(state, level - 1)}");
        }

        if (margin.ToWorse is { } more)
        {
            parts.Add($"more than {Far(state, more, level, "higher")} would give {(level + 1).Protection()}");
        }

        var close = state.Driver.Uncertainty is { } u && (margin.ToBetter < u || margin.ToWorse < u)
            ? " That is closer than the standard uncertainty of the measurement."
            : "";
        return parts.Count == 0 ? "" : $" {Sentence.Start(scheme.WordOf(state.Driver.Code))} {Sentence.And(parts)}.{close}";
    }

    private string Far(RegionState state, double distance, ProtectionLevel bound, string way)
    {
        var driver = state.Driver!;
        var text = $"{Figures.Distance(distance, driver.Value, driver.Unit)} {way}";
        if (state.Behind is { } behind)
        {
            var load = Math.Abs(behind.Value - behind.Largest(bound));
            return double.IsFinite(load) ? $"{text} ({scheme.WordOf(behind.Code)} {Figures.Distance(load, behind.Value, behind.Unit)} {way})" : text;
        }

        return Points(state, bound) is { } points ? $"{text} ({points} of excess risk)" : text;
    }

    /// <summary>The same distance in excess risk, where that is what decides and no limit comes before.</summary>
    private string? Points(RegionState state, ProtectionLevel bound)
    {
        var rule = inputs.Occupants.Where(o => o.Position == state.Position).SelectMany(o => scheme.RegionsOf(o.Dummy)).FirstOrDefault(r => r.Region == state.Region);
        if (rule?.Risk is not { } risk || state.Excess is not { } excess || !risk.Curves.Any(curve => curve.Load == state.Driver!.Code))
        {
            return null;
        }

        if (rule.Limits.Any(limit => limit.Measure == state.Driver!.Code && limit.Limit == state.Driver.Largest(bound)))
        {
            return null;
        }

        return Figures.Points(Math.Abs(excess - risk.Bounds.Largest(bound)));
    }

    /// <summary>What else would have to fall: named where that stays readable, else counted.</summary>
    private string Besides(RegionState state, ProtectionLevel better)
    {
        var others = state.Others.Where(other => other.Over(better) > 0).ToList();
        return others.Count switch
        {
            0 => "",
            > 2 => $" if {others.Count.ToString(CultureInfo.InvariantCulture)} other measures fell below their bounds too",
            _ => $" together with {Sentence.And([.. others.Select(o => $"{scheme.WordOf(o.Code)} {Figures.Distance(o.Over(better), o.Value, o.Unit)} lower")])}",
        };
    }
}
