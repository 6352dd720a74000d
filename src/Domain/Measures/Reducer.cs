using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Checks;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Measures.Pulse;
using Toepan.Domain.Measures.Structure;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures;

/// <summary>Package + procedure edition + channel flags → everything a method edition computes. Pure: same input, same digits.</summary>
public static class Reducer
{
    /// <summary>
    /// Problems of a channel that the package reader reports too, with file and line; they stand on the channel, but not again among the
    /// reduction's own.
    /// </summary>
    private static readonly HashSet<string> ReaderTells =
        ["channel.unfit", "channel.interval", "channel.start", "channel.missing-sample", "channel.too-few", "channel.code", "channel.count"];

    /// <param name="package">As read.</param>
    /// <param name="procedure">The edition the run is judged by.</param>
    /// <param name="flags">Every decision about channels in force.</param>
    public static Reduction Reduce(TestPackage package, ProcedureEdition procedure, IReadOnlyList<ChannelFlag> flags) =>
        Reduce(package, procedure, flags, Methods.First);

    /// <param name="methods">The edition of the methods to reduce by.</param>
    public static Reduction Reduce(TestPackage package, ProcedureEdition procedure, IReadOnlyList<ChannelFlag> flags, Methods methods)
    {
        var programme = package.Programme;
        var channels = new ChannelSource(package, procedure, flags);
        var pulse = new PulseContext(programme.Conduct, procedure, channels);
        var structure = StructureReducer.Reduce(procedure, programme.Structure, package.Points, package.Clearances);
        var context = new CheckContext(channels, pulse, programme.Occupants, package.Findings);
        var (contacts, contactChecks) = HeadContactBalance.Run(context);
        var checks = CrossChecks.All.SelectMany(check => check.Run(context)).Concat(contactChecks).ToList();
        var vehicle = PulseMeasures.All.Select(measure => measure.Reduce(pulse)).Concat(structure.Measures);
        return new Reduction
        {
            Test = programme.Test,
            MethodEdition = methods.Edition,
            ProcedureEdition = $"{procedure.Key}-{procedure.Edition}",
            Flags = flags,
            Conduct = ConductJudge.Judge(procedure, programme.Conduct),
            Measures = [.. Occupants(programme.Occupants, channels, procedure, methods).Concat(vehicle).Select(measure => Finite(measure) with { MethodEdition = methods.Edition })],
            Structure = structure.Result,
            Channels = [.. channels.Channels.Select(channel => channel.Belief)],
            CrossChecks = checks,
            HeadContacts = contacts,
            Problems =
            [
                .. Unknown(flags, package.Channels),
                .. channels.Channels.SelectMany(channel => channel.Problems).Where(problem => !ReaderTells.Contains(problem.Code)),
                .. structure.Problems,
                .. checks.Select(CrossChecks.ProblemOf).OfType<Problem>(),
            ],
        };
    }

    private static IEnumerable<Measure> Occupants(IReadOnlyList<Occupant> occupants, IChannelSource channels, ProcedureEdition procedure, Methods methods) =>
        occupants.SelectMany(occupant => OccupantMeasures.Reduce(new OccupantContext(occupant, channels, procedure.BothTibiaCells) { Methods = methods }));

    // Readings are bounded, so this cannot happen by size alone; a figure that is none is not stored all the same.
    private static Measure Finite(Measure measure) => measure.Value is { } value && !double.IsFinite(value)
        ? measure with { Value = null, Absent = "the result is not a finite number", Bounds = null }
        : measure;

    private static IEnumerable<Problem> Unknown(IReadOnlyList<ChannelFlag> flags, IReadOnlyList<RecordedChannel> channels) => flags
        .Where(flag => !channels.Any(channel => string.Equals(channel.Code, flag.Channel, StringComparison.OrdinalIgnoreCase)))
        .Select(flag => new Problem(
            ProblemSeverity.Warning, "flag.no-channel", $"A flag concerns channel {flag.Channel}, which the package does not hold.", Channel: flag.Channel));
}
