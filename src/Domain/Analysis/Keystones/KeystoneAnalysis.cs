using Toepan.Domain.Channels;
using Toepan.Domain.Measures;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Measures.Pulse;
using Toepan.Domain.Measures.Structure;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Keystones;

/// <summary>
/// Which single transducer carries the published level: each is left out in turn, as if the package had never held it (another may then stand in by the
/// method's own rules), the run is reduced and rated again. The same for each reference point. Filtered channels are kept, and only measures that look
/// for a channel left out are computed again; tested to agree with reducing the smaller package as a whole.
/// </summary>
public sealed class KeystoneAnalysis
{
    private readonly TestPackage package;
    private readonly ProcedureEdition procedure;
    private readonly Scheme scheme;
    private readonly ChannelSource channels;
    private readonly bool valid;
    private readonly Dictionary<int, List<ReducedPart>> parts;
    private readonly ReducedPart pulse;
    private readonly IReadOnlyList<Measure> structure;
    private readonly Rating rating;

    private KeystoneAnalysis(TestPackage package, ProcedureEdition procedure, IReadOnlyList<ChannelFlag> flags, Scheme scheme)
    {
        (this.package, this.procedure, this.scheme) = (package, procedure, scheme);
        channels = new(package, procedure, flags);
        valid = ConductJudge.Judge(procedure, package.Programme.Conduct).Valid;
        parts = package.Programme.Occupants.ToDictionary(occupant => occupant.Position, occupant => Parts(occupant).ToList());
        pulse = new(channels, source =>
        {
            var context = new PulseContext(package.Programme.Conduct, procedure, source);
            return [.. PulseMeasures.All.Select(measure => measure.Reduce(context))];
        });
        structure = Structure(package.Points);
        rating = Rate(occupant => occupant.Measures, pulse.Measures, structure);
    }

    public static KeystoneReport Of(TestPackage package, ProcedureEdition procedure, IReadOnlyList<ChannelFlag> flags, Scheme scheme)
    {
        var analysis = new KeystoneAnalysis(package, procedure, flags, scheme);
        return new(
            analysis.rating.Overall, analysis.rating.NotRated,
            [.. analysis.Channels().Concat(analysis.References()).OrderByDescending(item => item.Effect).ThenByDescending(item => item.Possible.Count)]);
    }

    private IEnumerable<ReducedPart> Parts(Occupant occupant)
    {
        foreach (var measure in OccupantMeasures.All)
        {
            yield return new(channels, source => [.. measure.Reduce(Context(source))]);
        }

        yield return new(channels, source => [.. LowerLegRisk.Reduce(Context(source))]);

        OccupantContext Context(IChannelSource source) => new(occupant, source, procedure.BothTibiaCells);
    }

    private IEnumerable<Keystone> Channels()
    {
        foreach (var transducer in channels.Channels.Where(channel => channel.Code is not null).GroupBy(channel => channel.Code!.Transducer))
        {
            List<string> codes = [.. transducer.Select(channel => channel.Code!.Text)];
            var rest = channels.Without(transducer.Key);
            yield return Compare(
                KeystoneKind.Channel, transducer.First().Recorded.Code, Rate(part => part.Without(codes, rest), pulse.Without(codes, rest), structure));
        }
    }

    private IEnumerable<Keystone> References() =>
        package.Points.Where(point => point.Role == PointRole.Reference).Select(point => point.Name).Distinct(StringComparer.Ordinal)
            .Select(name => Compare(
                KeystoneKind.Reference, name,
                Rate(part => part.Measures, pulse.Measures, Structure([.. package.Points.Where(point => point.Name != name)]))));

    private IReadOnlyList<Measure> Structure(IReadOnlyList<StructuralPoint> points) =>
        StructureReducer.Reduce(procedure, package.Programme.Structure, points, package.Clearances).Measures;

    private Rating Rate(Func<ReducedPart, IReadOnlyList<Measure>> occupantPart, IReadOnlyList<Measure> vehicle, IReadOnlyList<Measure> structural)
    {
        var measures = package.Programme.Occupants
            .SelectMany(occupant => OccupantMeasures.WithRisks(occupant, parts[occupant.Position].SelectMany(occupantPart)))
            .Concat(vehicle).Concat(structural);
        return Rater.Rate(scheme, new(valid, package.Programme.Occupants, [.. measures], package.Findings));
    }

    private Keystone Compare(KeystoneKind kind, string name, Rating without)
    {
        var regions = rating.Regions.Append(rating.Structure)
            .Zip(without.Regions.Append(without.Structure), (a, b) => new KeystoneRegion(a.Region, a.Position, a.Level, b.Level))
            .Where(region => region.With != region.Without);
        return new(kind, name, Effect(without), without.Overall, without.PossibleOverall, [.. regions]);
    }

    private KeystoneEffect Effect(Rating without)
    {
        if (without.Overall is { } level && level != rating.Overall)
        {
            return KeystoneEffect.Other;
        }

        return Open(without).Except(Open(rating)).Any() ? KeystoneEffect.Open
            : rating.Overall is not null && without.Overall is null ? KeystoneEffect.Certain
            : KeystoneEffect.None;
    }

    /// <summary>The overall levels that a rating leaves open: what it says, and what missing or bounded values could make of it.</summary>
    private static IEnumerable<ProtectionLevel> Open(Rating rating) =>
        rating.Overall is { } level ? rating.PossibleOverall.Append(level) : rating.PossibleOverall;
}
