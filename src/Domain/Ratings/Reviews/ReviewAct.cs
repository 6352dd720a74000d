namespace Toepan.Domain.Ratings.Reviews;

/// <summary>What a reviewer or a manager does about a rating.</summary>
public enum ReviewActKind
{
    /// <summary>Signs one part.</summary>
    Sign,

    /// <summary>Sends one part back with a reason.</summary>
    SendBack,

    /// <summary>Accepts a run that is not valid, with a reason.</summary>
    AcceptRun,

    /// <summary>Accepts a concern about equipment, with a reason.</summary>
    AcceptConcern,

    /// <summary>Approves the rating.</summary>
    Approve,
}

/// <summary>An act about one rating of a run. It holds for that rating and no other.</summary>
/// <param name="Id">Number; later acts have higher ones.</param>
/// <param name="Kind">What was done.</param>
/// <param name="Part">The part signed or sent back, else null.</param>
/// <param name="Concern">Key of the concern accepted, else null.</param>
/// <param name="Note">Note or reason.</param>
/// <param name="By">Who.</param>
/// <param name="At">When.</param>
/// <param name="Withdrawal">That it was taken back, or null.</param>
public sealed record ReviewAct(
    long Id, ReviewActKind Kind, ReviewPart? Part, string? Concern, string Note, string By, DateTimeOffset At, ReviewWithdrawal? Withdrawal);

/// <summary>That an act was taken back: by whom, when and why.</summary>
public sealed record ReviewWithdrawal(string By, DateTimeOffset At, string Reason);
