using Toepan.Domain.Analysis;
using Toepan.Domain.Channels;
using Toepan.Domain.Measures;
using Toepan.Web.Charts;
using Toepan.Web.Components;

namespace Toepan.Web.Pages.Channels;

/// <summary>A set of curves → the plot that shows it, with the measures that point into it.</summary>
public sealed class PlotModels(IReadOnlyList<Measure> measures, UnitSystem units)
{
    private const int Points = 300;

    /// <summary>The crash is over well before; later samples are in the channel's own file.</summary>
    private const double EndMs = 200;

    private static readonly Tone[] Tones = [Tone.Navy, Tone.Teal, Tone.Ochre, Tone.Plum];

    private sealed record Words(string Title, string[] Codes, string? Mark = null, string? Band = null, string Note = "");

    private static readonly Dictionary<string, Words> ByKey = new(StringComparer.Ordinal)
    {
        ["vehicle.pulse"] = new("Vehicle deceleration", ["vehicle.peak", "vehicle.olc"], Mark: "vehicle.peak"),
        ["vehicle.velocity"] = new("Velocities", ["vehicle.deltav"], Note: "Dummy velocities are over ground, from the same impact speed."),
        ["vehicle.travel"] = new("Vehicle travel", ["vehicle.stroke"], Note: "Vehicle and barrier crush together in it."),
        ["head.resultant"] = new("Head acceleration, resultant", ["head.hic15", "head.a3ms"], Mark: "head.peak", Band: "head.hic15"),
        ["neck.force"] = new("Neck axial force", ["neck.tension", "neck.compression"]),
        ["neck.moment"] = new("Neck moment at the condyle", ["neck.flexion", "neck.extension"]),
        ["chest.deflection"] = new("Chest deflection", ["chest.deflection", "chest.viscous"], Mark: "chest.deflection"),
        ["belt.force"] = new("Belt forces", []),
        ["femur.compression"] = new("Thigh force, compression up", ["femur.left.compression", "femur.right.compression"]),
        ["tibia.index"] = new("Tibia index", ["tibia.left.upper.index", "tibia.left.lower.index", "tibia.right.upper.index", "tibia.right.lower.index"]),
    };

    /// <summary>The plot of a set that has at least one curve.</summary>
    public PlotModel Of(CurveSet set)
    {
        var words = ByKey.GetValueOrDefault(set.Key) ?? new Words(set.Key, []);
        return new PlotModel
        {
            Title = words.Title,
            YLabel = DisplayUnits.Show(1, set.Unit, units).Unit,
            Series = [.. set.Curves.Select((curve, i) => Line(curve.Name, curve, set.Unit, Tones[i % Tones.Length]))],
            Marks = Marks(words.Mark, set),
            Bands = Bands(words.Band, set),
            Says = Sentence(words, set),
            XRange = (0, EndMs),
        };
    }

    /// <summary>Title of a set's plot; an unknown key stays a key.</summary>
    public static string TitleOf(string key) => ByKey.GetValueOrDefault(key)?.Title ?? key;

    /// <summary>A curve as a line over milliseconds, thinned so that no peak is lost, in the reader's units.</summary>
    public Series Line(string label, Curve curve, string unit, Tone tone)
    {
        var factor = DisplayUnits.Factor(unit, units);
        var kept = PlotReduction.Indices(curve.History.Values.Span, Points);
        return new Series(
            label, Array.ConvertAll(kept, i => curve.History.TimeAt(i) * 1000), Array.ConvertAll(kept, i => curve.History.Values.Span[i] * factor), tone);
    }

    private IReadOnlyList<PlotMark> Marks(string? code, CurveSet set) =>
        Find(code, set) is { Value: { } value, FromS: { } at } measure && at * 1000 <= EndMs
            ? [new PlotMark(at * 1000, value * DisplayUnits.Factor(set.Unit, units), Text(measure))]
            : [];

    private IReadOnlyList<PlotBand> Bands(string? code, CurveSet set) =>
        Find(code, set) is { Value: not null, FromS: { } from, ToS: { } to } measure
            ? [new PlotBand(from * 1000, to * 1000, $"HIC15 {Text(measure)}")]
            : [];

    private string Sentence(Words words, CurveSet set)
    {
        var figures = words.Codes.Select(code => Find(code, set)).OfType<Measure>().Select(m => $"{Measures.MeasureWords.Title(m.Code)} {Text(m)}");
        var parts = new[] { string.Join("; ", figures), words.Note.TrimEnd('.'), string.Join("; ", set.Absent) };
        return string.Concat(parts.Where(part => part.Length > 0).Select(part => $"{part}. ")).TrimEnd();
    }

    private Measure? Find(string? code, CurveSet set) => measures.FirstOrDefault(m => m.Code == code && m.Position == set.Position);

    private string Text(Measure measure)
    {
        var shown = DisplayUnits.Show(measure.Value, measure.Unit, units);
        return measure.Value is null ? "absent" : $"{shown.Number} {shown.Unit}".Trim();
    }
}
