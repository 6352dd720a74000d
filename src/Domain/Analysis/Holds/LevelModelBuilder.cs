using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Toepan.Domain.Ratings.Steps;

namespace Toepan.Domain.Analysis.Holds;

/// <summary>Scheme + stored facts of a run + scatter → <see cref="LevelModel"/>.</summary>
public sealed class LevelModelBuilder
{
    private readonly Scheme scheme;
    private readonly RatingInputs facts;
    private readonly ScatterTable scatter;
    private readonly MeasureLookup measures;
    private readonly Rating rating;
    private readonly CapStep caps;
    private readonly List<LevelInput> inputs = [];
    private readonly Dictionary<(string Code, int? Position), int> indices = [];

    private LevelModelBuilder(Scheme scheme, RatingInputs facts, ScatterTable scatter)
    {
        (this.scheme, this.facts, this.scatter) = (scheme, facts, scatter);
        measures = new(facts.Measures);
        rating = Rater.Rate(scheme, facts);
        caps = new(scheme, facts.Findings, rating.Position);
    }

    public static LevelModel Build(Scheme scheme, RatingInputs facts, ScatterTable scatter) => new LevelModelBuilder(scheme, facts, scatter).Build();

    private LevelModel Build()
    {
        var occupants = facts.Occupants.OrderBy(occupant => occupant.Position).ToList();
        var regions = occupants
            .SelectMany(occupant => scheme.RegionsOf(occupant.Dummy).Select(rule => Region(rule, occupant.Position)))
            .Append(Structure())
            .ToList();
        return new(inputs, regions, rating.Overall is null ? null : Overall(occupants, regions), rating.NotRated);
    }

    private OverallModel Overall(List<Occupant> occupants, List<RegionModel> regions)
    {
        var dummy = occupants.Find(occupant => occupant.Position == rating.Position)!.Dummy;
        int[] own = [.. Enumerable.Range(0, regions.Count - 1).Where(index => regions[index].Position == rating.Position)];
        return new(scheme, scheme.Overall.LifeOf(dummy)!, scheme.Overall.LegsOf(dummy), regions, own, regions.Count - 1, caps.OverallAtBest);
    }

    private RegionModel Region(RegionRule rule, int position)
    {
        var state = new RegionState { Region = rule.Region, Name = rule.Name, Position = position, Level = ProtectionLevel.High };
        var known = rule.Limits.Where(limit => measures.Value(limit.Measure, position) is not null).ToList();
        var held = rule.Limits.Except(known).Where(limit => RegionRater.Exceeded(measures.Find(limit.Measure, position), limit.Limit)).Select(limit => limit.AtBest);
        var region = new RegionModel
        {
            Region = rule.Region,
            Position = position,
            NotRated = rating.Regions.First(rated => rated.Region == rule.Region && rated.Position == position).NotRated,
            AtBest = held.Append(caps.OnRegion(state).Level!.Value).Max(),
            Limits = [.. known.Select(limit => (Index(limit.Measure, position), limit.Limit, limit.AtBest))],
        };
        return rule.Risk is { } risk ? ByRisk(region, rule, risk) : ByMeasures(region, rule.Measures);
    }

    private RegionModel Structure()
    {
        var region = new RegionModel { Region = "structure", Position = null, NotRated = rating.Structure.NotRated };
        return ByMeasures(region, scheme.Structure.Measures);
    }

    private RegionModel ByMeasures(RegionModel region, IReadOnlyList<RatedMeasure> rules) => new()
    {
        Region = region.Region, Position = region.Position, NotRated = region.NotRated, AtBest = region.AtBest, Limits = region.Limits,
        Measures =
        [
            .. rules.Where(rule => measures.Value(rule.Measure, region.Position) is not null)
                .Select(rule => (Index(rule.Measure, region.Position), rule.Bounds)),
        ],
    };

    private RegionModel ByRisk(RegionModel region, RegionRule rule, RiskRule risk)
    {
        var byLoads = risk.Curves.All(curve => measures.Value(curve.Load, region.Position) is not null);
        return new()
        {
            Region = region.Region, Position = region.Position, NotRated = region.NotRated, AtBest = region.AtBest, Limits = region.Limits,
            RiskBounds = risk.Bounds,
            RiskAtZero = risk.Curves.Max(curve => RiskFunctions.Get(curve.Function, rule.Dummy).AtZero),
            Curves = byLoads ? [.. risk.Curves.Select(curve => (Index(curve.Load, region.Position), RiskFunctions.Get(curve.Function, rule.Dummy).Curve))] : [],
            Risk = byLoads || region.NotRated is not null ? null : Index(risk.Measure, region.Position, Behind(risk, rule.Dummy, region.Position)),
        };
    }

    private RiskFunction? Behind(RiskRule risk, DummyType dummy, int? position) =>
        risk.Curves.FirstOrDefault(curve => curve.Load == measures.Find(risk.Measure, position)!.Detail) is { } use ? RiskFunctions.Get(use.Function, dummy) : null;

    private int Index(string code, int? position, RiskFunction? behind = null)
    {
        if (indices.TryGetValue((code, position), out var index))
        {
            return index;
        }

        var measure = measures.Find(code, position)!;
        inputs.Add(new(code, position, measure.Unit, measure.Value!.Value, scatter.Find(code), behind));
        return indices[(code, position)] = inputs.Count - 1;
    }
}
