using System.Globalization;
using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Checks;

/// <summary>
/// A resultant the laboratory recorded (direction R) against the one made from its components at the same class: greatest values within 2 % of the
/// recorded one. The value is the difference in per cent.
/// </summary>
public sealed class RecordedResultant : ICrossCheck
{
    public const string Check = "resultant.components";
    private const double LargestPercent = 2;
    private const string Unit = "%";
    private const string Expectation = "greatest values within 2 %";

    /// <inheritdoc/>
    public IEnumerable<CrossCheck> Run(CheckContext context) => context.Channels.Channels
        .Where(channel => channel.Code is { Direction: 'R', Dimension: "AC" or "FO" or "MO" })
        .DistinctBy(channel => channel.Code!.Transducer)
        .Select(channel => Compare(context.Channels, channel));

    private static CrossCheck Compare(ChannelSource source, PreparedChannel recorded)
    {
        var code = recorded.Code!;
        int? position = char.IsAsciiDigit(code.Position) && code.Position != '0' ? int.Parse([code.Position], CultureInfo.InvariantCulture) : null;
        var patterns = "XYZ".Select(axis => new ChannelPattern(code.Text[..14] + axis + "?")).Where(source.Has).ToList();
        var components = patterns.Select(pattern => source.FindWhole(pattern, recorded.RecordedClass)).OfType<ReducedChannel>().ToList();
        var whole = source.FindWhole(new ChannelPattern(code.Text), recorded.RecordedClass);
        if (whole is null || components.Count == 0 || components.Count < patterns.Count)
        {
            return CrossChecks.NotCheckable(Check, position, Unit, Expectation, $"{code}: it or a component of it cannot be used.");
        }

        if (Resultant.Of(components) is not { History: { } made })
        {
            return CrossChecks.NotCheckable(Check, position, Unit, Expectation, Resultant.Disagreement(components)!);
        }

        var (a, b) = (Greatest(whole.History), Greatest(made));
        var percent = 100 * Math.Abs(a - b) / a;
        return CrossChecks.Judge(
            Check, position, percent, Unit, Expectation, percent <= LargestPercent,
            $"{code} reaches {Wording.Figure(a)} {whole.Unit}, its {components.Count} components {Wording.Figure(b)} {whole.Unit}.");
    }

    private static double Greatest(TimeHistory history)
    {
        var greatest = 0.0;
        var range = SampleGrid.Between(history, SampleGrid.WindowFromS, SampleGrid.WindowToS);
        foreach (var value in history.Values.Span.Slice(range.First, range.Count))
        {
            greatest = Math.Max(greatest, Math.Abs(value));
        }

        return greatest;
    }
}
