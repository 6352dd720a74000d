using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings.Steps;

namespace Toepan.Domain.Ratings;

/// <summary>What a rating is made from: stored facts only, so that any scheme can be applied again later without the samples.</summary>
public sealed record RatingInputs(
    bool Valid, IReadOnlyList<Occupant> Occupants, IReadOnlyList<Measure> Measures, IReadOnlyList<Finding> Findings);

/// <summary>
/// Scheme + inputs → rating with its explanation. Pure. Order: region levels by risk or measures; limits; region caps (final region
/// levels); the worse of life and legs; the tie to the worst region; structure; overall caps. A region without its inputs is not rated,
/// and then neither is the overall level, but what it could be is said. Design §6; methods edition 1, "Settled readings".
/// </summary>
public static class Rater
{
    private const string DriverSeat = "driver";

    public static Rating Rate(Scheme scheme, RatingInputs inputs) => Rate(scheme, inputs, explained: true);

    /// <summary>The same levels, drivers, margins and rules without the explanation and what missing values leave open: for many runs at once.</summary>
    public static Rating Levels(Scheme scheme, RatingInputs inputs) => Rate(scheme, inputs, explained: false);

    private static Rating Rate(Scheme scheme, RatingInputs inputs, bool explained)
    {
        var occupants = inputs.Occupants.OrderBy(occupant => occupant.Position).ToList();
        if (occupants.Count == 0)
        {
            return Nobody(scheme, inputs);
        }

        var rated = occupants.Find(o => string.Equals(o.Seat.Trim(), DriverSeat, StringComparison.OrdinalIgnoreCase)) ?? occupants[0];
        var measures = new MeasureLookup(inputs.Measures);
        var caps = new CapStep(scheme, inputs.Findings, rated.Position);
        var regions = new RegionRater(scheme, measures);
        List<RegionState> states =
            [.. occupants.SelectMany(occupant => scheme.RegionsOf(occupant.Dummy).Select(rule => caps.OnRegion(regions.Rate(rule, occupant))))];
        List<RegionState> own = [.. states.Where(state => state.Position == rated.Position)];
        var structure = Structure(scheme, measures);
        var overall = new OverallRating(scheme, rated, own, structure, caps);
        var possible = explained ? new Completions(scheme, measures, rated, caps).Overall(own, structure) : [];
        return new()
        {
            Scheme = scheme.Key,
            Valid = inputs.Valid,
            Overall = overall.Step?.Final,
            NotRated = overall.NotRated,
            Position = rated.Position,
            Regions = [.. states.Select(state => state.ToRating())],
            Structure = structure.ToRating(),
            LifeExcess = overall.LifeExcess,
            LegsExcess = overall.LegsExcess,
            Rules = [.. states.SelectMany(state => state.Outcomes), .. overall.Outcomes],
            Explanation = explained ? [.. new Explanation(scheme, inputs, rated).Sentences(overall, states, structure, possible)] : [],
            PossibleOverall = possible,
        };
    }

    private static RegionState Structure(Scheme scheme, MeasureLookup measures)
    {
        var state = new RegionState { Region = "structure", Name = scheme.Structure.Name, Position = null };
        return measures.Missing(scheme, scheme.Structure.Inputs, null) is { } missing
            ? state with { NotRated = missing }
            : MeasuredLevel.Rate(state, scheme.Structure.Measures, measures, (_, _) => double.PositiveInfinity);
    }

    private static Rating Nobody(Scheme scheme, RatingInputs inputs)
    {
        const string Reason = "no dummy was in the vehicle";
        var structure = Structure(scheme, new MeasureLookup(inputs.Measures));
        return new()
        {
            Scheme = scheme.Key, Valid = inputs.Valid, Overall = null, NotRated = Reason, Position = 0, Regions = [], Structure = structure.ToRating(),
            LifeExcess = null, LegsExcess = null, Rules = [], Explanation = [$"The overall level is not rated: {Reason}."],
        };
    }
}
