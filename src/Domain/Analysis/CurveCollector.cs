using Toepan.Domain.Channels;

namespace Toepan.Domain.Analysis;

/// <summary>Collects the curves of one plot, and the reasons of those that cannot be drawn.</summary>
internal sealed class CurveCollector(string key, int? position, string unit)
{
    private readonly List<Curve> curves = [];
    private readonly List<string> absent = [];

    /// <summary>Adds a curve made from channels; only the part before a flag is drawn where one is unfit from a time on.</summary>
    public void Add(string name, IReadOnlyList<ChannelAnswer> answers, Func<IReadOnlyList<ReducedChannel>, ResultantAnswer>? make = null)
    {
        absent.AddRange(answers.Select(answer => answer.Absent).OfType<string>());
        var parts = answers.Select(answer => answer.Channel ?? answer.Partial).OfType<ReducedChannel>().ToList();
        if (parts.Count < answers.Count)
        {
            return;
        }

        var made = make is null ? new ResultantAnswer(parts[0].History, null) : make(parts);
        Add(name, made.History, made.Absent);
    }

    /// <summary>Adds a finished curve, or the reason there is none.</summary>
    public void Add(string name, TimeHistory? history, string? reason)
    {
        if (history is not null)
        {
            curves.Add(new Curve(name, history));
        }
        else if (reason is not null)
        {
            absent.Add(reason);
        }
    }

    public CurveSet Done() => new(key, position, unit, curves, [.. absent.Distinct()]);
}
