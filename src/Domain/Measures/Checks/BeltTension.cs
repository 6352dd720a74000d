using System.Globalization;
using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Pulse;

namespace Toepan.Domain.Measures.Checks;

/// <summary>A belt cannot push: no belt force (SEBE, FO) of class 60 below −0.2 kN.</summary>
public sealed class BeltTension : ICrossCheck
{
    public const string Check = "belt.least-force";
    private const int FilterClass = 60;
    private const double LeastKn = -0.2;
    private const string Unit = "kN";
    private const string Expectation = "never below -0.2 kN";

    /// <inheritdoc/>
    public IEnumerable<CrossCheck> Run(CheckContext context) => context.Channels.Channels
        .Select(channel => channel.Code)
        .OfType<ChannelCode>()
        .Where(code => code is { MainLocation: "SEBE", Dimension: "FO" })
        .DistinctBy(code => code.Transducer)
        .Select(code => Judge(context.Channels, code));

    private static CrossCheck Judge(ChannelSource source, ChannelCode code)
    {
        int? position = char.IsAsciiDigit(code.Position) && code.Position != '0' ? int.Parse([code.Position], CultureInfo.InvariantCulture) : null;
        var answer = source.Find(new ChannelPattern(code.Transducer + "?"), FilterClass);
        if (answer.Channel is not { } belt)
        {
            return CrossChecks.NotCheckable(Check, position, Unit, Expectation, answer.Absent!);
        }

        var samples = belt.History.Values.Span;
        var least = samples[Peak.LowestIndex(samples)];
        return CrossChecks.Judge(Check, position, least, Unit, Expectation, least >= LeastKn, $"{belt.Code}: sign or offset of the belt force.");
    }
}
