namespace Toepan.Domain.Programme;

/// <summary>Something that happened and what it changed in the facts of a run.</summary>
/// <param name="At">When it happened.</param>
/// <param name="Apply">The facts after it, from the facts before.</param>
public sealed record FactChange(DateTimeOffset At, Func<TestFacts, TestFacts> Apply);

/// <summary>A state and since when.</summary>
public sealed record StandingState(TestState State, DateTimeOffset Since);

/// <summary>Facts in the order they came about → the state a run is in, and since when it has been in it without a break.</summary>
public static class StateTimeline
{
    /// <summary>
    /// Applies the changes by time, those of one moment in the order given. A run nothing is known of is planned since <paramref name="begun"/>.
    /// </summary>
    public static StandingState Of(DateTimeOffset begun, IEnumerable<FactChange> changes)
    {
        var facts = new TestFacts();
        var standing = new StandingState(TestStates.Of(facts), begun);
        foreach (var change in changes.OrderBy(change => change.At))
        {
            facts = change.Apply(facts);
            var state = TestStates.Of(facts);
            standing = state == standing.State ? standing : new StandingState(state, change.At);
        }

        return standing;
    }
}
