using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Ratings;

/// <summary>Random runs: the rater against a rater written again from the text, and the properties that any scheme of this kind must have.</summary>
public sealed class RaterSecondOpinionTests
{
    [Theory]
    [InlineData(1, 0.0, 0.3)]
    [InlineData(2, 0.01, 0.3)]
    [InlineData(3, 0.0, 0.0)]
    [InlineData(4, 0.1, 0.6)]
    public void Rate_RandomRuns_AgreesWithARaterWrittenFromTheText(int seed, double missing, double findings)
    {
        var random = new Random(seed);
        for (var i = 0; i < 1000; i++)
        {
            var inputs = RandomRuns.Draw(random, missing, findings).Inputs();
            var (rating, slow) = (Rater.Rate(RatingCase.Scheme, inputs), new SlowRater(inputs));

            Assert.Equal(slow.Overall(), (int?)rating.Overall);
            Assert.Equal(slow.Structure, (int?)rating.Structure.Level);
            Assert.Equal(slow.Regions.Count, rating.Regions.Count);
            Assert.All(rating.Regions, region => Assert.Equal(slow.Regions[(region.Position!.Value, region.Region)], (int?)region.Level));
        }
    }

    [Fact]
    public void Rate_RandomRuns_ReachEveryLevelOfEveryRegionAndOverall()
    {
        var random = new Random(5);
        var reached = new HashSet<(string, DummyType?, ProtectionLevel)>();
        for (var i = 0; i < 2000; i++)
        {
            var inputs = RandomRuns.Draw(random, 0, 0.1).Inputs();
            var rating = Rater.Rate(RatingCase.Scheme, inputs);
            reached.Add(("overall", null, rating.Overall!.Value));
            reached.Add(("structure", null, rating.Structure.Level!.Value));
            foreach (var region in rating.Regions)
            {
                reached.Add((region.Region, inputs.Occupants.First(o => o.Position == region.Position).Dummy, region.Level!.Value));
            }
        }

        Assert.Equal((2 + (7 * 2)) * 4, reached.Count);
    }

    /// <summary>Worsening any one measure or adding any finding never betters a level.</summary>
    [Fact]
    public void Rate_WorseningAnyInput_NeverBettersALevel()
    {
        var random = new Random(6);
        for (var i = 0; i < 2000; i++)
        {
            var inputs = RandomRuns.Draw(random, 0, 0.2).Inputs();
            var pick = random.Next(inputs.Measures.Count);
            var factor = 1 + random.NextDouble();
            var worse = inputs with
            {
                Measures = [.. inputs.Measures.Select((m, k) => k == pick ? m with { Value = m.Code.StartsWith("risk.", StringComparison.Ordinal) ? Math.Min(1, m.Value!.Value * factor) : m.Value * factor } : m)],
                Findings = [.. inputs.Findings, .. RandomRuns.Draw(random, 0, 0.5).Inputs().Findings],
            };
            var (before, after) = (Rater.Rate(RatingCase.Scheme, inputs), Rater.Rate(RatingCase.Scheme, worse));

            Assert.True(after.Overall >= before.Overall);
            Assert.All(before.Regions.Zip(after.Regions), pair => Assert.True(pair.Second.Level >= pair.First.Level));
        }
    }

    /// <summary>Moving the driver by its margin, and a little more or less, crosses exactly that bound.</summary>
    [Fact]
    public void Rate_MarginToWorse_IsWhereTheRegionTurns()
    {
        var random = new Random(7);
        var tried = 0;
        for (var i = 0; i < 400; i++)
        {
            var inputs = RandomRuns.Draw(random, 0, 0.2).Inputs();
            foreach (var region in Rater.Rate(RatingCase.Scheme, inputs).Regions.Where(r => r.Margin?.ToWorse is not null))
            {
                tried++;
                var step = region.Margin!.ToWorse!.Value;
                Assert.True(step >= 0);
                Assert.Equal(region.Level, Moved(inputs, region, step - (1e-7 * region.Value!.Value)));
                Assert.True(Moved(inputs, region, step + (1e-7 * region.Value.Value)) > region.Level);
            }
        }

        Assert.True(tried > 1500);
    }

    [Fact]
    public void Rate_MarginToBetter_IsTheLeastFallThatCanHelp()
    {
        var random = new Random(8);
        var bettered = 0;
        for (var i = 0; i < 400; i++)
        {
            var inputs = RandomRuns.Draw(random, 0, 0.2).Inputs();
            foreach (var region in Rater.Rate(RatingCase.Scheme, inputs).Regions.Where(r => r.Margin?.ToBetter > 0))
            {
                var step = region.Margin!.ToBetter!.Value;
                Assert.Equal(region.Level, Moved(inputs, region, -step + (1e-7 * region.Value!.Value)));
                bettered += Moved(inputs, region, -step - (1e-7 * region.Value.Value)) < region.Level ? 1 : 0;
            }
        }

        Assert.True(bettered > 300);
    }

    [Fact]
    public void Rate_Twice_GivesTheSameSentences()
    {
        var inputs = RandomRuns.Draw(new Random(9), 0.05, 0.5).Inputs();

        Assert.Equal(Rater.Rate(RatingCase.Scheme, inputs).Explanation, Rater.Rate(RatingCase.Scheme, inputs).Explanation);
    }

    private static ProtectionLevel? Moved(RatingInputs inputs, RegionRating region, double by)
    {
        var moved = inputs with
        {
            Measures = [.. inputs.Measures.Select(m => m.Code == region.Driver && m.Position == region.Position ? m with { Value = m.Value + by } : m)],
        };
        return Rater.Rate(RatingCase.Scheme, moved).Regions.First(r => r.Region == region.Region && r.Position == region.Position).Level;
    }
}
