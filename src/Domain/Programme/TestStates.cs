namespace Toepan.Domain.Programme;

/// <summary>Facts → state, and the state's word.</summary>
public static class TestStates
{
    /// <summary>
    /// The furthest state the facts bear out. What is public stays released; a repeat that is due goes before everything but that;
    /// a run that is neither valid nor accepted goes no further, whatever its figures; signatures count only on a rated run.
    /// </summary>
    public static TestState Of(TestFacts facts) => facts switch
    {
        { Released: true } => TestState.Released,
        { RepeatDecided: true, Repeated: false } => TestState.RepeatDue,
        { PackageReceived: true, Valid: false, Accepted: false } => TestState.NotValid,
        { PackageReceived: true, HasOverallLevel: true } => Review(facts),
        { PackageReceived: true } or { Crashed: true } => TestState.Run,
        { SpecimenPrepared: true } => TestState.Prepared,
        { SpecimenReceived: true } => TestState.Received,
        _ => TestState.Planned,
    };

    /// <summary>The word on screen and in the API: planned, received, prepared, run, not valid, repeat due, rated, in review, approved, released.</summary>
    public static string Word(this TestState state) => state switch
    {
        TestState.Planned => "planned",
        TestState.Received => "received",
        TestState.Prepared => "prepared",
        TestState.Run => "run",
        TestState.NotValid => "not valid",
        TestState.RepeatDue => "repeat due",
        TestState.Rated => "rated",
        TestState.InReview => "in review",
        TestState.Approved => "approved",
        TestState.Released => "released",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Not a state of a test run."),
    };

    private static TestState Review(TestFacts facts) => facts switch
    {
        { Approved: true } => TestState.Approved,
        { Signatures: > 0 } or { ReviewOpened: true } => TestState.InReview,
        _ => TestState.Rated,
    };
}
