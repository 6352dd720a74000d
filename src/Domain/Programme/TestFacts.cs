namespace Toepan.Domain.Programme;

/// <summary>What is known of a test run, each from a record of its own; <see cref="TestStates.Of"/> makes a state of it.</summary>
public sealed record TestFacts
{
    /// <summary>The specimen has arrived.</summary>
    public bool SpecimenReceived { get; init; }

    /// <summary>Preparation is signed off.</summary>
    public bool SpecimenPrepared { get; init; }

    /// <summary>The crash has taken place.</summary>
    public bool Crashed { get; init; }

    /// <summary>A readable package is stored.</summary>
    public bool PackageReceived { get; init; }

    /// <summary>Every conduct item holds.</summary>
    public bool Valid { get; init; }

    /// <summary>A reviewer accepted the run, although not valid, with a reason.</summary>
    public bool Accepted { get; init; }

    /// <summary>It was decided to repeat the run.</summary>
    public bool RepeatDecided { get; init; }

    /// <summary>A run that repeats this one exists.</summary>
    public bool Repeated { get; init; }

    /// <summary>The current rating has an overall level.</summary>
    public bool HasOverallLevel { get; init; }

    /// <summary>A part was signed or sent back.</summary>
    public bool ReviewOpened { get; init; }

    /// <summary>Signatures that stand for the current rating.</summary>
    public int Signatures { get; init; }

    /// <summary>Every signature stands and a manager has approved the current rating.</summary>
    public bool Approved { get; init; }

    /// <summary>The sheet is public.</summary>
    public bool Released { get; init; }
}
