using System.Globalization;
using Toepan.Domain.Measures;

namespace Toepan.Api.Channels;

/// <summary>What a flag may say.</summary>
internal static class FlagLimits
{
    /// <summary>Longest reason kept, characters.</summary>
    public const int LongestReason = 2_000;

    /// <summary>Scale factors beyond this, or below its inverse, correct no transducer.</summary>
    public const double LargestFactor = 1e6;

    /// <summary>The refusal with value and limits, or null.</summary>
    public static Failure? Check(NewFlag flag)
    {
        if (string.IsNullOrWhiteSpace(flag.Channel))
        {
            return Failure.BadRequest("A flag names its channel.");
        }

        if (flag.Kind != ChannelFlagKind.Unfit && flag.FromS is not null)
        {
            return Failure.BadRequest("Only an unfit flag has a time from which it holds.");
        }

        if (flag.FromS is { } from && !double.IsFinite(from))
        {
            return Failure.BadRequest($"from is {Text(from)}; it is a finite time in s.");
        }

        return CheckFactor(flag) ?? CheckReason(flag.Reason);
    }

    public static Failure? CheckReason(string? reason) => Texts.Check("A reason", reason, LongestReason);

    /// <summary>The factor a flag stores: −1 for polarity, its own for scale, none for unfit.</summary>
    public static double? Factor(NewFlag flag) => flag.Kind == ChannelFlagKind.Polarity ? -1 : flag.Factor;

    /// <summary>The act in a sentence.</summary>
    public static string Sentence(NewFlag flag) => flag.Kind switch
    {
        ChannelFlagKind.Polarity => $"Corrected the polarity of {flag.Channel}",
        ChannelFlagKind.Scale => $"Corrected the scale of {flag.Channel} by {Text(flag.Factor ?? double.NaN)}",
        _ when flag.FromS is { } from => $"Flagged {flag.Channel} unfit from {Text(from)} s on",
        _ => $"Flagged {flag.Channel} unfit",
    };

    private static Failure? CheckFactor(NewFlag flag)
    {
        if (flag.Kind != ChannelFlagKind.Scale)
        {
            return flag.Factor is null || (flag.Kind == ChannelFlagKind.Polarity && flag.Factor == -1)
                ? null
                : Failure.BadRequest("Only a scale flag has a factor.");
        }

        return flag.Factor is { } factor && double.IsFinite(factor) && Math.Abs(factor) is <= LargestFactor and >= 1 / LargestFactor
            ? null
            : Failure.BadRequest($"factor is {(flag.Factor is { } given ? Text(given) : "missing")}; its size is {Text(1 / LargestFactor)} to {Text(LargestFactor)}.");
    }

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
