using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Programme;

public sealed class TestStatesTests
{
    private static readonly TestFacts Rated = new() { PackageReceived = true, Valid = true, HasOverallLevel = true };

    public static TheoryData<TestState, TestFacts> Cases => new()
    {
        { TestState.Planned, new() },
        { TestState.Received, new() { SpecimenReceived = true } },
        { TestState.Prepared, new() { SpecimenReceived = true, SpecimenPrepared = true } },
        { TestState.Run, new() { SpecimenPrepared = true, Crashed = true } },
        { TestState.Run, Rated with { HasOverallLevel = false } },
        { TestState.NotValid, Rated with { Valid = false } },
        { TestState.NotValid, Rated with { Valid = false, RepeatDecided = true, Repeated = true } },
        { TestState.NotValid, Rated with { Valid = false, Signatures = 2 } },
        { TestState.RepeatDue, Rated with { Valid = false, RepeatDecided = true } },
        { TestState.RepeatDue, Rated with { RepeatDecided = true } },
        { TestState.Rated, Rated },
        { TestState.Rated, Rated with { Valid = false, Accepted = true } },
        { TestState.InReview, Rated with { Signatures = 1 } },
        { TestState.InReview, Rated with { ReviewOpened = true } },
        { TestState.InReview, Rated with { Signatures = 4 } },
        { TestState.Approved, Rated with { Signatures = 4, Approved = true } },
        { TestState.NotValid, Rated with { Valid = false, Signatures = 4, Approved = true } },
        { TestState.Released, Rated with { Signatures = 2, Released = true } },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Of_Facts_GivesTheFurthestStateTheyBearOut(TestState expected, TestFacts facts) => Assert.Equal(expected, TestStates.Of(facts));

    [Fact]
    public void Word_OfEveryState_IsItsOwn() =>
        Assert.Equal(Enum.GetValues<TestState>().Length, Enum.GetValues<TestState>().Select(s => s.Word()).Distinct().Count());

    [Fact]
    public void Initial_Classes_AreTheThreeOfTheProgramme() =>
        Assert.Equal(["delivery-van", "compact-electric", "crew-cab-pickup"], VehicleClasses.Initial.Select(c => c.Key));
}
