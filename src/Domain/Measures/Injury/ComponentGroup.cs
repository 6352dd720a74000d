using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Injury;

/// <summary>
/// The channels one measure is reduced from. Complete: the measure has a value over their common samples. Not complete: it is absent
/// with the reason, and whatever is left gives a lower bound. Clipped: the value stands as recorded, with the bound beside it.
/// </summary>
internal sealed class ComponentGroup
{
    private readonly OccupantContext context;
    private readonly IReadOnlyList<Component> components;

    public ComponentGroup(OccupantContext context, params IReadOnlyList<Component> components)
    {
        this.context = context;
        this.components = components;
        var missing = components.Select(c => c.Answer.Absent).OfType<string>().Distinct().ToList();
        Absent = missing.Count > 0
            ? string.Join("; ", missing)
            : Resultant.Disagreement(components.Select(c => c.Channel!).ToList());
    }

    /// <summary>Why not all channels are usable together, or null.</summary>
    public string? Absent { get; }

    private IEnumerable<ReducedChannel> Usable => components.Select(c => c.Usable).OfType<ReducedChannel>();

    /// <summary>Reduces a measure of the catalogue; <paramref name="detail"/> is said where the extraction has nothing to say.</summary>
    public Measure Reduce(string code, Trace trace, Extraction extract, string? detail = null) =>
        Reduce(code, MeasureCatalogue.Get(code).Unit, trace, extract, detail);

    /// <inheritdoc cref="Reduce(string, Trace, Extraction, string)"/>
    public Measure Reduce(string code, string unit, Trace trace, Extraction extract, string? detail = null)
    {
        var described = Describe(code, unit);
        if (Absent is not null)
        {
            return described with { Absent = Absent, Bounds = BoundOfTheRest(trace, extract), Detail = detail };
        }

        var count = components.Min(c => c.Count);
        if (extract(History(count, trace.Value)) is not { } reading)
        {
            return described with { Absent = $"{components[0].Channel!.Code}: too few samples between 0 and 0.300 s" };
        }

        return described with
        {
            Value = Digits.Round12(reading.Value),
            FromS = Digits.Round12(reading.FromS),
            ToS = Digits.Round12(reading.ToS),
            Detail = reading.Detail ?? detail,
            Bounds = BoundOfClipped(count, trace, extract),
        };
    }

    private Measure Describe(string code, string unit) => new()
    {
        Code = code,
        Unit = unit,
        Position = context.Occupant.Position,
        Sources = Usable.Select(c => c.Code).Distinct().ToList(),
        FilterClass = Usable.FirstOrDefault()?.FilterClass,
        Bias = Usable.Select(c => c.Bias).OfType<BiasRemoved>().Distinct().ToList(),
    };

    private MeasureBounds? BoundOfTheRest(Trace trace, Extraction extract)
    {
        var usable = Usable.ToList();
        if (usable.Count == 0 || Resultant.Disagreement(usable) is not null)
        {
            return null;
        }

        return extract(History(components.Max(c => c.Count), trace.AtLeast)) is { Value: > 0 } reading
            ? new(Digits.Round12(reading.Value), null, $"what {Codes(usable)} shows reaches this without the rest")
            : null;
    }

    private MeasureBounds? BoundOfClipped(int count, Trace trace, Extraction extract)
    {
        var clipped = components.Where(c => c.IsClipped).Select(c => c.Channel!).ToList();
        if (clipped.Count == 0 || Enumerable.Range(0, count).All(trace.Exact))
        {
            return null;
        }

        return new(
            Digits.Round12(extract(History(count, trace.AtLeast))?.Value ?? 0), null, $"{Codes(clipped)} reached the end of its range; the true value was at least this");
    }

    private static string Codes(IEnumerable<ReducedChannel> channels) => string.Join(", ", channels.Select(c => c.Code).Distinct());

    private TimeHistory History(int count, Func<int, double> value)
    {
        var first = Usable.First().History;
        var values = new double[count];
        for (var i = 0; i < count; i++)
        {
            values[i] = value(i);
        }

        return new(first.StartS, first.IntervalS, values);
    }
}
