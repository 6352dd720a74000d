using Toepan.Domain.Measures;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>Measures by code and position; the first of a pair counts. A measure of the vehicle is found from every seat.</summary>
internal sealed class MeasureLookup
{
    private readonly Dictionary<(string Code, int? Position), Measure> byCode = [];

    public MeasureLookup(IReadOnlyList<Measure> measures)
    {
        foreach (var measure in measures)
        {
            byCode.TryAdd((measure.Code, measure.Position), measure);
        }
    }

    public Measure? Find(string code, int? position) =>
        byCode.TryGetValue((code, position), out var own) || byCode.TryGetValue((code, null), out own) ? own : null;

    public double? Value(string code, int? position) => Find(code, position)?.Value;

    /// <summary>Why a measure has no value, in a clause.</summary>
    public string WhyAbsent(string code, int? position) => Find(code, position)?.Absent ?? "not measured";

    /// <summary>Names the groups of which nothing is present, with the reasons; null where every group has a value.</summary>
    public string? Missing(Scheme scheme, IReadOnlyList<IReadOnlyList<string>> inputs, int? position)
    {
        var missing = inputs.Where(group => group.All(code => Value(code, position) is null)).ToList();
        return missing.Count == 0
            ? null
            : string.Join("; ", missing.Select(group => string.Join(" or ", group.Select(scheme.WordOf)) + ": " + WhyAbsent(group[0], position)));
    }
}
