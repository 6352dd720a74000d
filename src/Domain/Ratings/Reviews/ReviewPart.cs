namespace Toepan.Domain.Ratings.Reviews;

/// <summary>What is reviewed of a run, each part signed on its own.</summary>
public enum ReviewPart
{
    /// <summary>Was it run as the procedure says?</summary>
    Conduct,

    /// <summary>Can the channels be believed, and do the measures follow from them?</summary>
    Data,

    /// <summary>Do the points before and after give the displacements?</summary>
    Structure,

    /// <summary>Do film and inspection show what the findings say?</summary>
    Film,
}
