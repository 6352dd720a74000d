namespace Toepan.Domain.Programme;

/// <summary>Where a test run stands. Never stored: <see cref="TestStates.Of"/> derives it from the facts.</summary>
public enum TestState
{
    /// <summary>In the programme, no specimen yet.</summary>
    Planned,

    /// <summary>The specimen is in the laboratory.</summary>
    Received,

    /// <summary>Instrumented, dummies seated, points measured.</summary>
    Prepared,

    /// <summary>Crashed; no package yet, or one that gives no overall level.</summary>
    Run,

    /// <summary>Outside a conduct bound; not accepted, and either nothing is decided or the repeat has been run.</summary>
    NotValid,

    /// <summary>A repeat has been decided and not yet been run.</summary>
    RepeatDue,

    /// <summary>Valid (or accepted with a reason) and rated; nobody has signed.</summary>
    Rated,

    /// <summary>Somebody signed a part or sent one back; not approved.</summary>
    InReview,

    /// <summary>Every signature stands and a manager approved the rating; not public.</summary>
    Approved,

    /// <summary>Public.</summary>
    Released,
}
