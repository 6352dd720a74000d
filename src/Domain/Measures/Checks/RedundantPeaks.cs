using System.Globalization;
using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Checks;

/// <summary>
/// Accelerometers at one place in one direction (codes that differ only in a numbered fine location 2, ribs aside): their greatest magnitudes at class 180
/// agree within 10 % of the larger. The value is the difference in per cent.
/// </summary>
public sealed class RedundantPeaks : ICrossCheck
{
    public const string Check = "accelerometer.redundant-peak";
    private const int FilterClass = 180;
    private const double LargestPercent = 10;
    private const string Unit = "%";
    private const string Expectation = "peaks within 10 %";

    /// <inheritdoc/>
    public IEnumerable<CrossCheck> Run(CheckContext context) => context.Channels.Channels
        .Select(channel => channel.Code)
        .OfType<ChannelCode>()
        .Where(code => code.Dimension == "AC" && code.Direction is 'X' or 'Y' or 'Z' && code.MainLocation != "RIBS" && code.FineLocation2.All(char.IsAsciiDigit))
        .DistinctBy(code => code.Transducer)
        .GroupBy(code => (code.Text[..8], code.Dummy, code.Direction))
        .SelectMany(group => group.Skip(1).Select(other => Compare(context.Channels, group.First(), other)));

    private static CrossCheck Compare(ChannelSource source, ChannelCode one, ChannelCode other)
    {
        int? position = char.IsAsciiDigit(one.Position) && one.Position != '0' ? int.Parse([one.Position], CultureInfo.InvariantCulture) : null;
        var a = source.Find(new ChannelPattern(one.Transducer + "?"), FilterClass);
        var b = source.Find(new ChannelPattern(other.Transducer + "?"), FilterClass);
        if ((a.Absent ?? b.Absent) is { } absent)
        {
            return CrossChecks.NotCheckable(Check, position, Unit, Expectation, absent);
        }

        var (peakA, peakB) = (Magnitude(a.Channel!), Magnitude(b.Channel!));
        var percent = 100 * Math.Abs(peakA - peakB) / Math.Max(peakA, peakB);
        return CrossChecks.Judge(
            Check, position, percent, Unit, Expectation, percent <= LargestPercent,
            $"{a.Channel!.Code} peaks at {Wording.Figure(peakA)} g, {b.Channel!.Code} at {Wording.Figure(peakB)} g.");
    }

    private static double Magnitude(ReducedChannel channel)
    {
        var greatest = 0.0;
        foreach (var value in channel.History.Values.Span)
        {
            greatest = Math.Max(greatest, Math.Abs(value));
        }

        return greatest;
    }
}
