using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings;

/// <summary>What a rating is made from: stored facts only, so that any scheme can be applied again later without the samples.</summary>
public sealed record RatingInputs(
    bool Valid, IReadOnlyList<Occupant> Occupants, IReadOnlyList<Measure> Measures, IReadOnlyList<Finding> Findings);

/// <summary>Scheme + inputs → rating with its explanation. Pure.</summary>
public static class Rater
{
    public static Rating Rate(Scheme scheme, RatingInputs inputs) => throw new NotImplementedException();
}
