using Toepan.Domain.Analysis;
using Toepan.Domain.Analysis.Explore;

namespace Toepan.Api.Analysis.Explore;

/// <summary>A question to keep.</summary>
public sealed record NewQuestionJson(string? Name, string? Address);

/// <summary>One run (occupant) of an answer.</summary>
public sealed record ExplorePointJson(
    string Test, string Vehicle, string Title, string Class, int? ModelYear, double? MassKg, string Group, bool Summary, double X, double? Y);

/// <summary>An answer as the contract writes it: the question, the figures behind the picture, its sentence, the runs.</summary>
public sealed record ExploreJson(
    ExploreQuestion Question, string XTitle, string XUnit, string? YTitle, string? YUnit, string MethodEdition, string Sentence, int Asked, int WithoutFigure,
    SampleStatistics? Statistics, Relation? Relation, IReadOnlyList<HistogramBin>? Bins, Trend? Trend, Groups? Groups, IReadOnlyList<ExplorePointJson> Points)
{
    public static ExploreJson Of(ExploreAnswer answer) => new(
        answer.Question, answer.XTitle, answer.XUnit, answer.YTitle, answer.YUnit, Domain.Measures.MethodEdition.Current, answer.Sentence, answer.Asked, answer.WithoutFigure,
        answer.Statistics, answer.Relation, answer.Bins, answer.Trend, answer.Groups,
        [.. answer.Points.Select(point => new ExplorePointJson(
            point.Test, point.Vehicle, point.Title, point.Class, point.ModelYear, point.MassKg, point.Group, point.Summary, point.X,
            double.IsFinite(point.Y) ? point.Y : null))]);
}
