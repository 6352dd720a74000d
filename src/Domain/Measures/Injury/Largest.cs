namespace Toepan.Domain.Measures.Injury;

/// <summary>The largest of several measures of one code: absent where one of them is, with the reasons of all that are; bounded from below by every one.</summary>
internal static class Largest
{
    public static Measure Of(IReadOnlyList<Measure> each)
    {
        var absent = each.Select(m => m.Absent).OfType<string>().Distinct().ToList();
        var sources = each.SelectMany(m => m.Sources).Distinct().ToList();
        var bias = each.SelectMany(m => m.Bias).Distinct().ToList();
        var filterClass = each.Select(m => m.FilterClass).FirstOrDefault(c => c is not null);
        var largest = absent.Count > 0
            ? each[0] with { Absent = string.Join("; ", absent), Value = null, FromS = null, ToS = null, Detail = null }
            : each.MaxBy(m => m.Value)!;
        return largest with { Sources = sources, Bias = bias, FilterClass = filterClass, Bounds = Bound(each) };
    }

    private static MeasureBounds? Bound(IReadOnlyList<Measure> each)
    {
        var because = each.Select(m => m.Bounds?.Because).OfType<string>().Distinct().ToList();
        var known = each.Select(m => m.Bounds is null ? m.Value : m.Bounds.AtLeast).OfType<double>().ToList();
        if (known.Count == 0 || each.All(m => m is { Bounds: null, Absent: null }))
        {
            return null;
        }

        return new(known.Max(), null, because.Count > 0 ? string.Join("; ", because) : "the other reaches this alone");
    }
}
