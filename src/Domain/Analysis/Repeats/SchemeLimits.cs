using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Repeats;

/// <summary>The figure a scheme holds a measure against: its limit, else the largest value still at low protection.</summary>
public sealed class SchemeLimits(Scheme scheme)
{
    /// <summary>For a dummy, or for the vehicle (null); null where the scheme has none.</summary>
    public double? Of(string code, DummyType? dummy) =>
        Rules(dummy).SelectMany(rule => rule.Limits).Where(limit => limit.Measure == code).Select(limit => (double?)limit.Limit).FirstOrDefault()
        ?? Rules(dummy).SelectMany(rule => rule.Measures).Concat(scheme.Structure.Measures)
            .Where(rated => rated.Measure == code).Select(rated => (double?)rated.Bounds.Low).FirstOrDefault();

    /// <summary>The smallest of any dummy's.</summary>
    public double? Any(string code) => Enum.GetValues<DummyType>().Select(dummy => Of(code, dummy)).Min();

    private IEnumerable<RegionRule> Rules(DummyType? dummy) => scheme.Regions.Where(rule => rule.Dummy == dummy);
}
