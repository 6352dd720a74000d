namespace Toepan.Domain.Ratings.Reviews;

/// <summary>The rating that a review is about.</summary>
/// <param name="RatingId">Number of the rating.</param>
/// <param name="ReductionId">Number of the reduction it was made from.</param>
/// <param name="Valid">Whether every conduct item holds.</param>
/// <param name="Overall">Overall level, or null.</param>
/// <param name="NotRated">Why there is none, or null.</param>
public sealed record ReviewedRating(long RatingId, long ReductionId, bool Valid, ProtectionLevel? Overall, string? NotRated);
