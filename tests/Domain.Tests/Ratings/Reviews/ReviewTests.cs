using Toepan.Domain.Programme;
using Toepan.Domain.Programme.Equipment;
using Toepan.Domain.Ratings;
using Toepan.Domain.Ratings.Reviews;
using Xunit;

namespace Toepan.Domain.Tests.Ratings.Reviews;

public sealed class ReviewTests
{
    private static readonly DateTimeOffset Start = new(2031, 3, 14, 8, 0, 0, TimeSpan.Zero);
    private static readonly ReviewedRating Rating = new(7, 3, true, ProtectionLevel.Moderate, null);

    [Fact]
    public void Standing_FourSignaturesAndAnApproval_IsApproved() => Assert.True(Standing(Signed(4), Approve(5)).Approved);

    [Fact]
    public void Standing_ThreeSignatures_LacksTheFourth()
    {
        var standing = Standing(Signed(3));

        Assert.Equal(["Film is not signed."], standing.Missing);
        Assert.False(standing.Approved);
    }

    [Fact]
    public void Standing_ConcernKnownAfterApproval_SuspendsIt()
    {
        RunConcern[] concerns = [new("check/12", "a post-test check of the dummy's chest failed", Start.AddHours(9))];

        Assert.True(ReviewStanding.Of(Rating, [.. Signed(4), Approve(5)], concerns, Start.AddHours(8)).Approved);
        var later = ReviewStanding.Of(Rating, [.. Signed(4), Approve(5)], concerns, Start.AddHours(9));

        Assert.False(later.Approved);
        Assert.Contains("chest failed", later.Suspended, StringComparison.Ordinal);
    }

    [Fact]
    public void Timeline_ActsOfAnOlderRating_CountNoLonger()
    {
        var spans = new[] { new RatingSpan(Rating, Start, [.. Signed(4), Approve(5)]), new RatingSpan(Rating with { RatingId = 8 }, Start.AddHours(10), []) };

        var before = StateTimeline.Of(Start, ReviewTimeline.Changes(spans[..1], []));
        var after = StateTimeline.Of(Start, ReviewTimeline.Changes(spans, []));

        Assert.Equal((TestState.Approved, Start.AddHours(5)), (before.State, before.Since));
        Assert.Equal((TestState.Rated, Start.AddHours(10)), (after.State, after.Since));
    }

    [Theory]
    [InlineData(65.41, ProtectionLevel.High, null)]
    [InlineData(65.41, ProtectionLevel.Moderate, "too fast")]
    [InlineData(63.39, ProtectionLevel.High, "too slow")]
    public void Acceptance_Speed_FollowsTheMethod(double speedKmh, ProtectionLevel overall, string? refusal)
    {
        var conduct = ConductJudge.Judge(ProcedureLibrary.Find("offset-frontal-64")!, new ConductReadings
        {
            ImpactSpeedKmh = [(decimal)speedKmh, (decimal)speedKmh], OverlapPercent = 40, DummyTemperatureC = [21.5m],
        });

        var found = AcceptanceRules.Refusal(conduct, overall);

        Assert.False(conduct.Valid);
        if (refusal is null)
        {
            Assert.Null(found);
        }
        else
        {
            Assert.Contains(refusal, found, StringComparison.Ordinal);
        }
    }

    private static ReviewStanding Standing(IEnumerable<ReviewAct> signed, params ReviewAct[] more) => ReviewStanding.Of(Rating, [.. signed, .. more], [], Start.AddHours(20));

    private static IEnumerable<ReviewAct> Signed(int count) => Enum.GetValues<ReviewPart>().Take(count)
        .Select((part, i) => new ReviewAct(i + 1, ReviewActKind.Sign, part, null, "", "reviewer", Start.AddHours(i + 1), null));

    private static ReviewAct Approve(int hour) => new(hour, ReviewActKind.Approve, null, null, "", "manager", Start.AddHours(hour), null);
}
