using System.Globalization;
using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Analysis.Traces;

/// <summary>A channel of a run as far as choosing needs it.</summary>
public sealed record ListedChannel(string Code, int Number, int? RecordedClass);

/// <summary>A ready-made view.</summary>
/// <param name="Key">Key, e.g. <c>head</c>.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Position">Seat, or null for the vehicle.</param>
/// <param name="Traces">Its traces.</param>
/// <param name="Each">Whether each trace has a panel of its own.</param>
public sealed record DailyView(string Key, string Title, int? Position, IReadOnlyList<Trace> Traces, bool Each = false);

/// <summary>
/// The plots a laboratory looks at every day, as views of one run: channels chosen and filtered as the measures choose and filter them (methods edition 1).
/// A view whose channels are not all in the package leaves out the traces it cannot make; a view without traces is not offered.
/// </summary>
public sealed class DailyViews(string test, double impactSpeedKmh, IReadOnlyList<ListedChannel> channels)
{
    private const double KmhPerMs = 3.6;
    private const int SheetTraces = 12;
    private static readonly string[] Sides = ["LE", "RI"];
    private static readonly string[] TibiaCells = ["LEUP", "LELO", "RIUP", "RILO"];
    private static readonly string[] PulsePairs = ["BPIL", "SILL"];
    private static readonly string[] BeltPlaces = ["03", "06"];

    public IReadOnlyList<DailyView> All(IEnumerable<Occupant> occupants) =>
        [.. Vehicle().Concat(occupants.SelectMany(Of)).Concat(Sheets()).Where(view => view.Traces.Count > 0)];

    private IEnumerable<DailyView> Vehicle()
    {
        var start = Math.Round(impactSpeedKmh / KmhPerMs, 6);
        var traces = new List<TraceExpression>();
        if (Pulse(60) is { } drawn && Pulse(180) is { } integrated)
        {
            var velocity = new FunctionTrace(TraceFunction.Integral, [integrated], start);
            traces.AddRange([Negative(drawn), velocity, new FunctionTrace(TraceFunction.Integral, [velocity], null)]);
        }

        yield return View("pulse", "Pulse with velocity and travel", null, traces);
    }

    private IEnumerable<DailyView> Of(Occupant occupant)
    {
        var constants = DummyConstants.Of(occupant.Dummy);
        var p = occupant.Position;
        yield return View("head", "Head resultant with its HIC windows", p, Function(TraceFunction.Resultant, Axes(p, "HEAD0000", "AC", 1000)));
        yield return View("neck", "Neck force and moment at the condyle", p, [
            .. One(Dummy(p, "NECKUP00", "FOZ", 600)),
            .. Function(TraceFunction.Condyle, [Dummy(p, "NECKUP00", "MOY", 600), Dummy(p, "NECKUP00", "FOX", 600)])]);
        var deflection = Dummy(p, "CHST0003", "DSX", constants.DeflectionClass) ?? Dummy(p, "CHST0000", "DSX", constants.DeflectionClass);
        yield return View("chest", "Chest deflection and belt forces", p, [.. One(deflection).Select(Negative), .. Belts(p)]);
        yield return View("femurs", "Femur forces", p, [.. Sides.SelectMany(side => One(Dummy(p, $"FEMR{side}00", "FOZ", 600))).Select(Negative)]);
        yield return View("tibia", "Tibia index over time", p, [.. TibiaCells.SelectMany(cell => Function(
            TraceFunction.TibiaIndex, [Dummy(p, $"TIBI{cell}", "MOX", 600), Dummy(p, $"TIBI{cell}", "MOY", 600), Dummy(p, $"TIBI{cell}", "FOZ", 600)]))]);
    }

    private IEnumerable<DailyView> Sheets()
    {
        var all = channels.OrderBy(channel => channel.Number).Select(channel => channel.Code).Distinct().Chunk(SheetTraces).ToArray();
        return all.Select((codes, i) => View(
            string.Create(CultureInfo.InvariantCulture, $"raw-{i + 1}"), string.Create(CultureInfo.InvariantCulture, $"Contact sheet {i + 1} of {all.Length}, raw channels"), null,
            codes.Select(code => new ChannelTrace(test, code, null))) with { Each = true });
    }

    private TraceExpression? Pulse(int filterClass)
    {
        if (Find(new ChannelPattern("10VEHC??????ACX?"), filterClass) is { } centre)
        {
            return centre;
        }

        var pairs = PulsePairs.Select(place => Function(
            TraceFunction.Mean, [Find(new ChannelPattern($"10{place}LE????ACX?"), filterClass), Find(new ChannelPattern($"10{place}RI????ACX?"), filterClass)]));
        return pairs.SelectMany(pair => pair).FirstOrDefault();
    }

    private IEnumerable<TraceExpression> Belts(int position) =>
        BeltPlaces.SelectMany(place => One(Find(new ChannelPattern($"1{position}SEBE??{place}??FO??"), 60)));

    private ChannelTrace?[] Axes(int position, string location, string dimension, int filterClass) =>
        [.. "XYZ".Select(axis => Dummy(position, location, $"{dimension}{axis}", filterClass))];

    private ChannelTrace? Dummy(int position, string location, string component, int filterClass) =>
        Find(ChannelPattern.Dummy(position, location, component), filterClass);

    /// <summary>The same choice as <see cref="ChannelSelection"/>.</summary>
    private ChannelTrace? Find(ChannelPattern pattern, int filterClass) => channels
        .Where(channel => pattern.Matches(channel.Code))
        .GroupBy(channel => channel.Code[..^1])
        .MinBy(group => group.Min(channel => channel.Number))?
        .OrderBy(channel => FilterClasses.Preference(channel.RecordedClass)).ThenBy(channel => channel.Number)
        .Select(channel => new ChannelTrace(test, channel.Code, filterClass)).First();

    private static IEnumerable<TraceExpression> One(TraceExpression? trace) => trace is null ? [] : [trace];

    private static IEnumerable<TraceExpression> Function(TraceFunction function, IReadOnlyList<ChannelTrace?> parts) =>
        parts.Any(part => part is null) ? [] : [new FunctionTrace(function, [.. parts.OfType<ChannelTrace>()], null)];

    private static TraceExpression Negative(TraceExpression trace) => new FunctionTrace(TraceFunction.Negative, [trace], null);

    private static DailyView View(string key, string title, int? position, IEnumerable<TraceExpression> traces) =>
        new(key, title, position, [.. traces.Select(trace => new Trace(trace, 0))]);
}
