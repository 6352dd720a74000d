using Toepan.Domain.Channels;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Checks;

/// <summary>
/// What touched the head, by the balance of forces: F = m_head · a_head − F_neck on the axes for which head acceleration and upper neck force both exist,
/// class 600; m_head 4.54 kg (H3), 3.73 kg (HF), from memory. Over 500 N for 3 ms in all = contact; stretches less than 3 ms apart are one interval. Held against film's head-strike
/// findings both ways, to 10 ms (common practice, no source). An airbag touches the head too: a contact no finding names is worth a look, not a fault.
/// </summary>
public static class HeadContactBalance
{
    /// <summary>Film strikes no computed contact agrees with.</summary>
    public const string UnfeltCheck = "head-contact.film-only";

    /// <summary>Computed contacts no film strike names.</summary>
    public const string UnseenCheck = "head-contact.balance-only";

    private const int FilterClass = 600;
    private const double ThresholdN = 500;
    private const double LeastS = 0.003;
    private const double FilmToleranceS = 0.010;
    private const double NewtonPerKilonewton = 1000;

    /// <summary>Head mass, kg.</summary>
    public static double HeadMassKg(DummyType dummy) => dummy == DummyType.H3 ? 4.54 : 3.73;

    /// <summary>Contacts of every occupant, and the verdicts against film.</summary>
    public static (IReadOnlyList<HeadContact> Contacts, IReadOnlyList<CrossCheck> Checks) Run(CheckContext context)
    {
        var contacts = new List<HeadContact>();
        var checks = new List<CrossCheck>();
        var driver = context.Occupants.FirstOrDefault(occupant => occupant.Seat == "driver") ?? context.Occupants.MinBy(occupant => occupant.Position);
        foreach (var occupant in context.Occupants)
        {
            var strikes = context.Findings
                .Where(finding => finding.Kind == "head-strike" && (finding.Position ?? driver!.Position) == occupant.Position).ToList();
            var (force, absent) = Force(context.Channels, occupant);
            if (force is null)
            {
                checks.AddRange(Uncheckable(occupant.Position, absent!));
                continue;
            }

            var found = Contacts(occupant.Position, force).ToList();
            contacts.AddRange(found);
            checks.AddRange(Compare(occupant.Position, found, strikes));
        }

        return (contacts, checks);
    }

    // Magnitude of the contact force, N.
    private static (TimeHistory? Force, string? Absent) Force(ChannelSource source, Occupant occupant)
    {
        var axes = new List<(ReducedChannel Head, ReducedChannel Neck)>();
        foreach (var axis in "XYZ")
        {
            var head = ChannelPattern.Dummy(occupant.Position, "HEAD0000", $"AC{axis}");
            var neck = ChannelPattern.Dummy(occupant.Position, "NECKUP00", $"FO{axis}");
            if (!source.Has(head) || !source.Has(neck))
            {
                continue;
            }

            var (a, f) = (source.Find(head, FilterClass), source.Find(neck, FilterClass));
            if ((a.Absent ?? f.Absent) is { } absent)
            {
                return (null, absent);
            }

            axes.Add((a.Channel!, f.Channel!));
        }

        if (axes.Count == 0)
        {
            return (null, "no axis has both head acceleration and upper neck force");
        }

        var disagreement = Resultant.Disagreement(axes.SelectMany(axis => new[] { axis.Head, axis.Neck }).ToList());
        return disagreement is null ? (Balance(axes, HeadMassKg(occupant.Dummy)), null) : (null, disagreement);
    }

    private static TimeHistory Balance(List<(ReducedChannel Head, ReducedChannel Neck)> axes, double massKg)
    {
        var force = new double[axes.Min(axis => Math.Min(axis.Head.History.Count, axis.Neck.History.Count))];
        for (var i = 0; i < force.Length; i++)
        {
            var sum = 0.0;
            foreach (var (head, neck) in axes)
            {
                var newton = (massKg * WorkingUnits.StandardGravity * head.History.Values.Span[i]) - (NewtonPerKilonewton * neck.History.Values.Span[i]);
                sum += newton * newton;
            }

            force[i] = Math.Sqrt(sum);
        }

        var grid = axes[0].Head.History;
        return new(grid.StartS, grid.IntervalS, force);
    }

    private static IEnumerable<HeadContact> Contacts(int position, TimeHistory force)
    {
        var over = Enumerable.Range(0, force.Count).Where(i => force.Values.Span[i] > ThresholdN).ToList();
        var least = SampleGrid.Reaching(LeastS, force.IntervalS);
        if (over.Count < least)
        {
            yield break;
        }

        var from = over[0];
        for (var k = 0; k < over.Count; k++)
        {
            if (k + 1 == over.Count || over[k + 1] - over[k] >= least)
            {
                var peak = force.Values.Slice(from, over[k] - from + 1).ToArray().Max();
                yield return new(position, Digits.Round12(force.TimeAt(from)), Digits.Round12(force.TimeAt(over[k])), Digits.Round12(peak));
                from = k + 1 < over.Count ? over[k + 1] : from;
            }
        }
    }

    private static IEnumerable<CrossCheck> Compare(int position, List<HeadContact> contacts, List<Finding> strikes)
    {
        var unfelt = strikes.Where(strike => !contacts.Exists(contact => Meet(contact, strike))).ToList();
        var unseen = contacts.Where(contact => !strikes.Exists(strike => Meet(contact, strike))).ToList();
        yield return CrossChecks.Judge(
            UnfeltCheck, position, unfelt.Count, string.Empty, UnfeltExpectation, unfelt.Count == 0,
            unfelt.Count == 0 ? string.Empty : "No contact force for: " + string.Join("; ", unfelt.Select(Describe)) + ".");
        yield return CrossChecks.Judge(
            UnseenCheck, position, unseen.Count, string.Empty, UnseenExpectation, unseen.Count == 0,
            unseen.Count == 0 ? string.Empty : "An airbag looks alike. No finding for: " + string.Join("; ", unseen.Select(Describe)) + ".");
    }

    private const string UnfeltExpectation = "0 head-strike findings without a computed contact";
    private const string UnseenExpectation = "0 computed contacts without a head-strike finding";

    private static IEnumerable<CrossCheck> Uncheckable(int position, string reason) =>
    [
        CrossChecks.NotCheckable(UnfeltCheck, position, string.Empty, UnfeltExpectation, reason),
        CrossChecks.NotCheckable(UnseenCheck, position, string.Empty, UnseenExpectation, reason),
    ];

    // A finding without a time (inspection) meets any contact.
    private static bool Meet(HeadContact contact, Finding strike) =>
        strike.TimeMs is not { } ms || (ms / 1000 >= contact.FromS - FilmToleranceS && ms / 1000 <= contact.ToS + FilmToleranceS);

    private static string Describe(Finding strike) => strike.TimeMs is { } ms ? $"head-strike at {Wording.Figure(ms)} ms" : "head-strike without a time";

    private static string Describe(HeadContact contact) => $"{Wording.Ms(contact.FromS)} to {Wording.Ms(contact.ToS)}, {Wording.Figure(contact.PeakN)} N";
}
