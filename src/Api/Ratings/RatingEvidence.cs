using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings;

/// <summary>A rating with what it was made from.</summary>
/// <param name="Rating">Levels, rules, explanation.</param>
/// <param name="Stored">Whether this is the run's stored rating, not one made by a scheme asked for.</param>
/// <param name="Inputs">What it was made from, by hash.</param>
/// <param name="Reduction">Number of the reduction.</param>
/// <param name="MethodEdition">Method edition of the reduction.</param>
/// <param name="Arithmetic">The formulas with their numbers.</param>
/// <param name="WouldNowBe">Of a released run: what the scheme that rates now makes of it; null where that is the rating shown.</param>
public sealed record RatingEvidence(
    Rating Rating, bool Stored, InputHashes Inputs, long Reduction, string MethodEdition, IReadOnlyList<ArithmeticStep> Arithmetic, RatingAside? WouldNowBe);

/// <summary>A rating kept beside a released one.</summary>
public sealed record RatingAside(string Scheme, ProtectionLevel? Overall, string? NotRated, DateTimeOffset At);
