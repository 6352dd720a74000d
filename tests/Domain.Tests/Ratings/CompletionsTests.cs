using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Ratings;

/// <summary>Which overall levels the missing or bounded values leave open, against filling them in.</summary>
public sealed class CompletionsTests
{
    [Fact]
    public void Possible_FireWithAMissingHead_IsVeryLowWhateverIsMissing()
    {
        var rating = RatingCase.Benign().Absent("head.hic15").Absent("head.a3ms").Found("fire", FindingSeverity.Severe).Rate();

        Assert.Null(rating.Overall);
        Assert.Equal([ProtectionLevel.VeryLow], rating.PossibleOverall);
        Assert.Equal("Whatever the missing values are, the overall level would be very low protection.", rating.Explanation[1]);
    }

    /// <summary>A missing head with all else high: high (none), moderate (up to low), low or very low (alone over 60 %, tied to a very low region).</summary>
    [Fact]
    public void Possible_MissingHeadAllElseHigh_IsEveryLevel()
    {
        var rating = RatingCase.Benign().Absent("head.hic15").Rate();

        Assert.Equal([ProtectionLevel.High, ProtectionLevel.Moderate, ProtectionLevel.Low, ProtectionLevel.VeryLow], rating.PossibleOverall);
        Assert.Contains("would decide between high protection, moderate protection, low protection and very low protection", rating.Explanation[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Possible_HeadAtLeastHigh_LeavesOutBetterLevels()
    {
        // HIC15 at least 1500: risk 42 % (standards.md curve), so the head is very low and the overall low or worse.
        var rating = RatingCase.Benign().Absent("head.hic15", bounds: new(1500, null, "clipped")).Rate();

        Assert.Equal([ProtectionLevel.Low, ProtectionLevel.VeryLow], rating.PossibleOverall);
    }

    [Fact]
    public void Possible_ClippedValue_KeepsTheOverallAndSaysWhatItCouldBe()
    {
        var rating = RatingCase.Benign().Set("chest.deflection", 12, bounds: new(12, null, "clipped")).Rate();

        Assert.Equal(ProtectionLevel.High, rating.Overall);
        Assert.Equal(4, rating.PossibleOverall.Count);
        Assert.Contains("values known only as bounds", rating.Explanation[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Possible_BoundedBothWaysWithinOneLevel_IsThatLevel() =>
        Assert.Equal([ProtectionLevel.High], RatingCase.Benign().Set("chest.deflection", 12, bounds: new(10, 13, "ends early")).Rate().PossibleOverall);

    [Fact]
    public void Possible_MissingStructure_SpansWhatTheStructureMayHold() =>
        Assert.Equal(
            [ProtectionLevel.High, ProtectionLevel.Moderate, ProtectionLevel.Low], RatingCase.Benign().Absent("structure.footwell.rearward").Rate().PossibleOverall);

    [Fact]
    public void Possible_EverythingMissing_IsEveryLevel() =>
        Assert.Equal(4, Rater.Rate(RatingCase.Scheme, new(true, [new(1, "driver", DummyType.H3)], [], [])).PossibleOverall.Count);

    /// <summary>Whatever values fill the gaps, the level they give was named possible; and with one gap every named level is reached by some value.</summary>
    [Theory]
    [InlineData(21, 0.03)]
    [InlineData(22, 0.15)]
    public void Possible_RandomGapsFilledAtRandom_ContainsTheLevel(int seed, double missing)
    {
        var random = new Random(seed);
        for (var i = 0; i < 400; i++)
        {
            var inputs = RandomRuns.Draw(random, missing, 0.1).Inputs();
            var possible = Rater.Rate(RatingCase.Scheme, inputs).PossibleOverall;
            for (var fill = 0; fill < 10 && possible.Count > 0; fill++)
            {
                Assert.Contains(Filled(inputs, random), possible);
            }
        }
    }

    [Theory]
    [InlineData("head.hic15", 10, 6000)]
    [InlineData("neck.tension", 0.1, 9)]
    [InlineData("chest.deflection", 1, 140)]
    [InlineData("femur.left.compression", 0.1, 25)]
    [InlineData("risk.lowerleg.left", 0.001, 1)]
    [InlineData("structure.footwell.rearward", 1, 400)]
    public void Possible_OneGap_IsExactlyWhatSomeValueGives(string code, double from, double to)
    {
        var random = new Random(23);
        for (var i = 0; i < 10; i++)
        {
            var run = RandomRuns.Draw(random, 0, 0.05);
            var inputs = run.Inputs();
            var rated = inputs.Occupants.FirstOrDefault(o => o.Seat == "driver") ?? inputs.Occupants.OrderBy(o => o.Position).First();
            if (rated.Dummy == DummyType.HF && code.StartsWith("risk.", StringComparison.Ordinal))
            {
                continue;
            }

            var possible = run.Absent(code, rated.Position).Rate().PossibleOverall;
            var reached = Enumerable.Range(0, 300).Select(k => run.Set(code, from * Math.Pow(to / from, k / 299.0), rated.Position).Rate().Overall!.Value);
            Assert.Equal(reached.Distinct().Order(), possible);
        }
    }

    private static ProtectionLevel Filled(RatingInputs inputs, Random random)
    {
        var donor = RandomRuns.Draw(random, 0, 0).Inputs().Measures;
        var filled = inputs.Measures.Select(m => m.Value is not null ? m
            : m with { Absent = null, Value = donor.FirstOrDefault(d => d.Code == m.Code)?.Value ?? random.NextDouble() });
        return Rater.Rate(RatingCase.Scheme, inputs with { Measures = [.. filled] }).Overall!.Value;
    }
}
