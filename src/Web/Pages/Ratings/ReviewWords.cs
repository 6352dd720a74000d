using Toepan.Domain.Ratings.Reviews;

namespace Toepan.Web.Pages.Ratings;

/// <summary>Reviews in words.</summary>
public static class ReviewWords
{
    public static string Name(ReviewPart part) => part switch
    {
        ReviewPart.Conduct => "Conduct",
        ReviewPart.Data => "Data",
        ReviewPart.Structure => "Structure",
        ReviewPart.Film => "Film",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "Not a part of a review."),
    };

    /// <summary>What a signature on the part says.</summary>
    public static string Statement(ReviewPart part) => part switch
    {
        ReviewPart.Conduct => "The run was made as the procedure says, and what was not is stated.",
        ReviewPart.Data => "The channels can be believed, or are flagged, and the measures follow from them.",
        ReviewPart.Structure => "The points before and after were measured well enough to give the displacements shown.",
        ReviewPart.Film => "Film and inspection show what the findings say, and nothing that they leave out.",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "Not a part of a review."),
    };

    /// <summary>Section of the run's page where the evidence stands.</summary>
    public static string Anchor(ReviewPart part) => part switch
    {
        ReviewPart.Conduct => "conduct",
        ReviewPart.Data => "belief",
        ReviewPart.Structure => "structure",
        _ => "findings",
    };

    public static string Act(ReviewAct act) => act.Kind switch
    {
        ReviewActKind.Sign => $"{Name(act.Part!.Value)} signed",
        ReviewActKind.SendBack => $"{Name(act.Part!.Value)} sent back",
        ReviewActKind.AcceptRun => "Run accepted",
        ReviewActKind.AcceptConcern => "Concern accepted",
        _ => "Rating approved",
    };
}
