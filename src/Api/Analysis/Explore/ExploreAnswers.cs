using Toepan.Domain.Analysis;
using Toepan.Domain.Analysis.Explore;
using Toepan.Domain.Measures;

namespace Toepan.Api.Analysis.Explore;

/// <summary>Points → the answer of a view.</summary>
internal static class ExploreAnswers
{
    /// <param name="classTitles">Names of the classes that take part.</param>
    /// <param name="points">Every occupant the question covers; NaN where a figure is absent.</param>
    public static ExploreAnswer Of(ExploreQuestion question, IReadOnlyList<string> classTitles, IReadOnlyList<ExplorePoint> points)
    {
        var pair = question.View == "scatter";
        var held = points.Where(point => double.IsFinite(point.X) && (!pair || double.IsFinite(point.Y)) && (question.View != "trend" || point.ModelYear is not null)).ToList();
        var words = new ExploreWords(
            classTitles.Count == 1 ? classTitles[0].ToLowerInvariant() : "runs", Lower(question.X), Unit(question.X), question.Y is { } y ? Lower(y) : "", Grouped(question.Group));
        var answer = new ExploreAnswer(
            question, MeasureCatalogue.Title(question.X), Unit(question.X), question.Y is { } code ? MeasureCatalogue.Title(code) : null,
            question.Y is { } other ? Unit(other) : null, "", points.Count, points.Count - held.Count, held);
        return question.View switch
        {
            "scatter" => Scatter(answer, words),
            "distribution" => Distribution(answer, words),
            "trend" => WithTrend(answer, words),
            "ranked" => Ranked(answer, words),
            _ => Grouped(answer, words),
        };
    }

    private static ExploreAnswer Scatter(ExploreAnswer answer, ExploreWords words)
    {
        var relation = Relation.Of(answer.Points);
        return answer with { Relation = relation, Sentence = ExploreSentences.Of(relation, words) };
    }

    private static ExploreAnswer Distribution(ExploreAnswer answer, ExploreWords words)
    {
        double[] values = [.. answer.Points.Select(point => point.X)];
        var statistics = SampleStatistics.Of(values);
        return answer with { Statistics = statistics, Bins = Histogram.Of(values), Sentence = ExploreSentences.Of(statistics, words) };
    }

    private static ExploreAnswer WithTrend(ExploreAnswer answer, ExploreWords words)
    {
        var trend = Trend.Of(answer.Points);
        return answer with { Trend = trend, Sentence = ExploreSentences.Of(trend, words) };
    }

    private static ExploreAnswer Ranked(ExploreAnswer answer, ExploreWords words)
    {
        List<ExplorePoint> ordered = [.. answer.Points.OrderByDescending(point => point.X).ThenBy(point => point.Test, StringComparer.Ordinal)];
        return answer with { Points = ordered, Sentence = ExploreSentences.Ranked(ordered, words) };
    }

    private static ExploreAnswer Grouped(ExploreAnswer answer, ExploreWords words)
    {
        var groups = Groups.Of(answer.Points);
        return answer with { Groups = groups, Sentence = ExploreSentences.Of(groups, words) };
    }

    private static string Unit(string code) => MeasureCatalogue.Get(code).Unit;

    private static string Lower(string code)
    {
        var title = MeasureCatalogue.Title(code);
        return title.Length > 1 && char.IsUpper(title[1]) ? title : char.ToLowerInvariant(title[0]) + title[1..];
    }

    private static string Grouped(string group) => group switch
    {
        "class" => "classes",
        "dummy" => "dummies",
        "procedure" => "procedures",
        "level" => "levels",
        "year" => "model years",
        _ => "kinds of result",
    };
}
