using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Programme;

public sealed class StateTimelineTests
{
    private static readonly DateTimeOffset Begun = new(2031, 3, 1, 8, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Of_Nothing_IsPlannedSinceItBegan() => Assert.Equal(new(TestState.Planned, Begun), StateTimeline.Of(Begun, []));

    [Fact]
    public void Of_ChangesOutOfOrder_AreAppliedByTime() => Assert.Equal(
        new(TestState.Prepared, Begun.AddDays(4)),
        StateTimeline.Of(Begun, [Change(4, f => f with { SpecimenPrepared = true }), Change(2, f => f with { SpecimenReceived = true })]));

    [Fact]
    public void Of_ChangeThatLeavesTheState_KeepsSinceWhen() => Assert.Equal(
        new(TestState.NotValid, Begun.AddDays(1)),
        StateTimeline.Of(Begun, [Change(1, f => f with { PackageReceived = true }), Change(5, f => f with { HasOverallLevel = true })]));

    [Fact]
    public void Of_RepeatDecidedThenRun_IsDueBetweenThem()
    {
        FactChange[] decided = [Change(1, f => f with { PackageReceived = true }), Change(3, f => f with { RepeatDecided = true })];

        Assert.Equal(new(TestState.RepeatDue, Begun.AddDays(3)), StateTimeline.Of(Begun, decided));
        Assert.Equal(new(TestState.NotValid, Begun.AddDays(9)), StateTimeline.Of(Begun, [.. decided, Change(9, f => f with { Repeated = true })]));
    }

    private static FactChange Change(int day, Func<TestFacts, TestFacts> apply) => new(Begun.AddDays(day), apply);
}
