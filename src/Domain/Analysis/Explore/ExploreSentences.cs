namespace Toepan.Domain.Analysis.Explore;

/// <summary>What a picture of the programme says, in one sentence. A connection or a trend is claimed only where its 95 % interval leaves out zero.</summary>
public static class ExploreSentences
{
    private const double MassCaution = MassComparison.CautionRatio;

    public static string Of(Relation relation, ExploreWords words)
    {
        if (relation.Pearson is not { } pearson)
        {
            return $"{relation.Count} {words.Runs} have both figures: too few, or too alike, to say how the two go together.";
        }

        var figures = $"r = {ExploreWords.Number(pearson.Value)}, 95 % interval {ExploreWords.Number(pearson.Interval.Low)} to {ExploreWords.Number(pearson.Interval.High)}";
        return pearson.Interval.HoldsZero && Math.Abs(pearson.Value) < 1
            ? $"Of {relation.Count} {words.Runs}, none shows more than chance would: {words.X} and {words.Y} are not seen to go together ({figures})."
            : $"Of {relation.Count} {words.Runs}, those with more {words.X} tend to have {(pearson.Value > 0 ? "more" : "less")} {words.Y} ({figures}). It does not say that one causes the other.";
    }

    public static string Of(SampleStatistics statistics, ExploreWords words) => statistics.Count switch
    {
        0 => $"No {words.Runs} have this figure.",
        < 4 => $"{statistics.Count} {words.Runs} have this figure, from {words.Figure(statistics.Minimum!.Value)} to {words.Figure(statistics.Maximum!.Value)}.",
        _ => $"Of {statistics.Count} {words.Runs}, half lie between {words.Figure(statistics.LowerQuartile!.Value)} and {words.Figure(statistics.UpperQuartile!.Value)}; the median is {words.Figure(statistics.Median!.Value)}.",
    };

    public static string Of(Trend trend, ExploreWords words)
    {
        var count = trend.Years.Sum(year => year.Statistics.Count);
        if (trend.Line is not { } line)
        {
            return $"{count} {words.Runs} of {trend.Years.Count} model years: too few to speak of a trend.";
        }

        var reach = line.SlopeInterval.High - line.Slope;
        var years = $"{count} {words.Runs} of model years {trend.Years[0].Year} to {trend.Years[^1].Year}";
        return Math.Abs(line.Slope) <= reach
            ? $"Across {years}, no trend stands out from chance ({words.Figure(line.Slope)} a year, ± {words.Figure(reach)})."
            : $"Across {years}, {words.X} {(line.Slope > 0 ? "rises" : "falls")} by {words.Figure(Math.Abs(line.Slope))} a year (± {words.Figure(reach)}).";
    }

    public static string Of(Groups groups, ExploreWords words)
    {
        var count = groups.Each.Sum(group => group.Statistics.Count);
        if (groups.Comparison is not { } comparison)
        {
            return $"{count} {words.Runs} in {groups.Each.Count} {words.Groups}: too few to compare.";
        }

        var share = ExploreWords.Number(Math.Round(100 * comparison.ShareBetween));
        var chance = comparison.Probability < 0.001 ? "less than 0.001" : ExploreWords.Number(comparison.Probability);
        return $"Of the differences among {count} {words.Runs}, {share} % lie between the {groups.Each.Count} {words.Groups}; the chance of as much where they are alike is {chance}.";
    }

    /// <summary>The ends of a ranked list, and whether masses let it be read as a ranking.</summary>
    /// <param name="ordered">Points in the order shown.</param>
    public static string Ranked(IReadOnlyList<ExplorePoint> ordered, ExploreWords words)
    {
        if (ordered.Count == 0)
        {
            return $"No {words.Runs} have this figure.";
        }

        var masses = ordered.Where(point => point.MassKg is > 0).Select(point => point.MassKg!.Value).ToList();
        var ratio = masses.Count == 0 ? double.PositiveInfinity : masses.Max() / masses.Min();
        var caution = masses.Count < ordered.Count
            ? " Not every mass is known, so this is an order for reading and no ranking."
            : ratio > MassCaution ? $" The heaviest has {ExploreWords.Number(ratio)} times the mass of the lightest, so this is an order for reading and no ranking: frontal results compare only between vehicles of similar mass."
            : ratio > MassComparison.FreeRatio ? " Masses differ by more than a tenth: compare with caution." : "";
        return $"Of {ordered.Count} {words.Runs}, {ordered[0].Title} ({ordered[0].Test}) comes first with {words.Figure(ordered[0].X)}, {ordered[^1].Title} ({ordered[^1].Test}) last with {words.Figure(ordered[^1].X)}.{caution}";
    }
}
