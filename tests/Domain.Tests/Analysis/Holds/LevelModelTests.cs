using Toepan.Domain.Analysis.Holds;
using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Measures;
using Toepan.Domain.Ratings;
using Toepan.Domain.Tests.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Holds;

/// <summary>The model against the rater, on runs of every severity, at their own figures and at others.</summary>
public sealed class LevelModelTests
{
    private const int Runs = 600;

    [Fact]
    public void At_RandomRunsAndFigures_AgreesWithTheRater()
    {
        var random = new Random(20310314);
        var rated = 0;
        for (var run = 0; run < Runs; run++)
        {
            var facts = RandomRuns.Draw(random, missing: run % 5 == 0 ? 0.05 : 0, findings: 0.3).Inputs();
            var model = LevelModelBuilder.Build(RatingCase.Scheme, facts, ScatterTable.Of(RatingCase.Scheme, []));
            Agree(facts, model, [.. model.Values]);
            double[] others = [.. model.Inputs.Select(input => Moved(input, random))];
            rated += Agree(With(facts, model, others), model, others) is null ? 0 : 1;
        }

        Assert.InRange(rated, Runs / 2, Runs);
    }

    internal static RatingInputs With(RatingInputs facts, LevelModel model, IReadOnlyList<double> figures)
    {
        var values = model.Inputs.Zip(figures).ToDictionary(pair => (pair.First.Code, pair.First.Position), pair => pair.Second);
        return facts with
        {
            Measures =
            [
                .. facts.Measures.Select(measure => values.TryGetValue((measure.Code, measure.Position), out var value) ? measure with { Value = Digits.Round12(value) } : measure),
            ],
        };
    }

    private static double Moved(LevelInput input, Random random)
    {
        var value = input.Value * Math.Exp(random.NextDouble() - 0.5);
        return Digits.Round12(input.IsRisk ? Math.Min(1, value) : value);
    }

    private static ProtectionLevel? Agree(RatingInputs facts, LevelModel model, double[] figures)
    {
        var levels = new ProtectionLevel[model.Regions.Count];
        var overall = model.At(figures, levels);
        var rating = Rater.Rate(RatingCase.Scheme, facts);
        Assert.Equal(rating.Overall, overall);
        var regions = rating.Regions.Append(rating.Structure).ToList();
        for (var i = 0; i < levels.Length; i++)
        {
            var (region, position, notRated) = model.Regions[i];
            Assert.Equal((regions[i].Region, regions[i].Position, regions[i].Level), (region, position, notRated is null ? levels[i] : null));
        }

        return overall;
    }
}
