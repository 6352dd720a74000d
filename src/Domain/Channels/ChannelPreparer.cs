using Toepan.Domain.Channels.Quality;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using static Toepan.Domain.Channels.Wording;

namespace Toepan.Domain.Channels;

/// <summary>Recorded channel + flags → prepared channel: unit, offset, fitness and quality problems, by "Before anything" of methods edition 1.</summary>
public static class ChannelPreparer
{
    /// <summary>Beyond this, in working units, a sample is no reading of anything in a crash (our own bound, no source); it keeps every later product finite.</summary>
    public const double LargestReading = 1e9;

    /// <param name="recorded">The channel as read.</param>
    /// <param name="flags">Flags of the whole run; those of other channels are passed over.</param>
    /// <param name="expectedPeak">Sign the procedure expects of the main peak, or null.</param>
    public static PreparedChannel Prepare(RecordedChannel recorded, IReadOnlyList<ChannelFlag> flags, int? expectedPeak)
    {
        var own = flags.Where(flag => string.Equals(flag.Channel, recorded.Code, StringComparison.OrdinalIgnoreCase)).ToList();
        var code = ChannelCode.TryParse(recorded.Code);
        var unit = UnitOf(recorded, code, out var unitProblem);
        var problems = new List<Problem>();
        AddIdentityProblems(recorded, code, problems);
        Add(problems, unitProblem);
        var broken = Broken(recorded);
        Add(problems, broken);

        var factor = (unit?.Factor ?? 1) * own.Aggregate(1.0, (product, flag) => product * (flag.Factor ?? 1));
        var judged = broken is null ? Judge(recorded, factor, unit?.WorkingUnit ?? recorded.Unit, expectedPeak, problems) : Judged.Nothing;
        var partly = own.Where(flag => flag is { Kind: ChannelFlagKind.Unfit, FromS: not null }).MinBy(flag => flag.FromS);
        return new PreparedChannel
        {
            Recorded = recorded,
            Code = code,
            Unit = unit?.WorkingUnit,
            Factor = factor,
            RecordedClass = code is null ? FilterClasses.FromHeader(recorded.HeaderFilterClass) : FilterClasses.Recorded(code.FilterLetter, recorded.HeaderFilterClass),
            Bias = judged.Bias,
            Unfit = Flagged(own) ?? Reason(broken) ?? Reason(unitProblem) ?? judged.Unfit,
            UnfitFromS = partly?.FromS,
            UnfitFromReason = partly?.Reason,
            Clipped = judged.Clipped,
            Problems = problems,
        };
    }

    private sealed record Judged(BiasRemoved? Bias, string? Unfit, IReadOnlyList<SampleRange> Clipped)
    {
        public static Judged Nothing { get; } = new(null, null, []);
    }

    private static Judged Judge(RecordedChannel recorded, double factor, string unit, int? expectedPeak, List<Problem> problems)
    {
        var samples = recorded.Samples.Span;
        var (start, interval) = (recorded.FirstSampleS!.Value, recorded.IntervalS!.Value);
        var (min, max) = Extremes.Of(samples);
        if (min == max)
        {
            var flat = Error(recorded, "channel.flat", $"flat: all {samples.Length} samples read {Figure(min)} {recorded.Unit}", Figure(min));
            problems.Add(flat);
            return new(null, Reason(flat), []);
        }

        var largest = Math.Max(Math.Abs(min), Math.Abs(max)) * Math.Abs(factor);
        if (!(largest <= LargestReading))
        {
            var absurd = Error(recorded, "channel.magnitude", $"a reading of {Figure(largest)} {unit} is beyond anything measurable", Figure(largest));
            problems.Add(absurd);
            return new(null, Reason(absurd), []);
        }

        var offset = BiasWindow.Take(recorded.Code, start, interval, samples, factor);
        var clipped = Clipping.Find(samples, recorded.AmplitudeClass);
        var context = new QualityContext(recorded, start, interval, factor, offset?.Bias.Value ?? 0, offset?.Drift, unit, expectedPeak);
        problems.AddRange(QualityChecks.Run(context, clipped));
        return new(offset?.Bias, null, clipped);
    }

    private static UnitConversion? UnitOf(RecordedChannel recorded, ChannelCode? code, out Problem? problem)
    {
        problem = null;
        if (WorkingUnits.Find(recorded.Unit) is not { } found)
        {
            problem = Error(recorded, "channel.unit-unknown", $"unknown unit '{recorded.Unit}'", recorded.Unit);
            return null;
        }

        var wanted = code is null ? null : WorkingUnits.OfDimension(code.Dimension);
        if (wanted is not null && wanted != found.WorkingUnit)
        {
            problem = Error(recorded, "channel.unit-dimension", $"unit '{recorded.Unit}' does not measure dimension {code!.Dimension}, which is in {wanted}", recorded.Unit);
        }

        return found;
    }

    private static void AddIdentityProblems(RecordedChannel recorded, ChannelCode? code, List<Problem> problems)
    {
        if (code is null)
        {
            problems.Add(Warning(recorded, "channel.code", $"the code has not 16 letters or digits; the channel is kept and used by no measure", recorded.Code));
        }
        else if (FilterClasses.Disagree(code.FilterLetter, recorded.HeaderFilterClass))
        {
            var used = FilterClasses.Recorded(code.FilterLetter, recorded.HeaderFilterClass);
            problems.Add(Warning(
                recorded, "channel.class-disagrees",
                $"filter letter {code.FilterLetter} and header class {recorded.HeaderFilterClass!.Trim()} disagree; the lower, {used}, is taken", recorded.HeaderFilterClass));
        }
    }

    private static Problem? Broken(RecordedChannel recorded)
    {
        if (recorded.UnfitReason is { } known)
        {
            return Error(recorded, "channel.unfit", known, null);
        }

        if (recorded.IntervalS is not { } interval || !double.IsFinite(interval) || interval <= 0)
        {
            return Error(recorded, "channel.interval", "no usable sampling interval", null);
        }

        if (recorded.FirstSampleS is not { } start || !double.IsFinite(start))
        {
            return Error(recorded, "channel.start", "no time of first sample", null);
        }

        var samples = recorded.Samples.Span;
        if (samples.Length < CfcFilter.MinSamples)
        {
            return Error(recorded, "channel.too-few", $"{samples.Length} samples, at least {CfcFilter.MinSamples} are needed", $"{samples.Length}");
        }

        return FirstNotFinite(samples) is { } bad
            ? Error(recorded, "channel.missing-sample", $"sample {bad + 1} of {samples.Length} is missing or not a number", $"{bad + 1}")
            : null;
    }

    private static int? FirstNotFinite(ReadOnlySpan<double> samples)
    {
        for (var i = 0; i < samples.Length; i++)
        {
            if (!double.IsFinite(samples[i]))
            {
                return i;
            }
        }

        return null;
    }

    private static string? Flagged(List<ChannelFlag> own) =>
        own.Find(flag => flag is { Kind: ChannelFlagKind.Unfit, FromS: null }) is { } flag
            ? $"{flag.Channel}: flagged unfit by an engineer: {flag.Reason}"
            : null;

    private static string? Reason(Problem? problem) => problem?.Message.TrimEnd('.');

    private static void Add(List<Problem> problems, Problem? problem)
    {
        if (problem is not null)
        {
            problems.Add(problem);
        }
    }

    private static Problem Error(RecordedChannel recorded, string code, string what, string? value) =>
        new(ProblemSeverity.Error, code, $"{recorded.Code}: {what}.", recorded.File, null, recorded.Code, value);

    private static Problem Warning(RecordedChannel recorded, string code, string what, string? value) =>
        new(ProblemSeverity.Warning, code, $"{recorded.Code}: {what}.", recorded.File, null, recorded.Code, value);
}
