namespace Toepan.Domain.Measures.Pulse;

/// <summary>Turns results on a pulse into measures that carry their channels, offsets and class.</summary>
internal static class PulseReport
{
    public const string ClippedReason = "a vehicle channel was at its stop: the deceleration was at least the recorded one";

    /// <summary>A value with its window or instant, s.</summary>
    public static Measure Present(string code, string unit, int filterClass, VehiclePulse pulse, double value, double fromS, double toS) =>
        Blank(code, unit, filterClass, pulse) with { Value = Digits.Round12(value), FromS = Digits.Round12(fromS), ToS = Digits.Round12(toS) };

    /// <summary>No value; where a bound is known from the part an engineer trusts, it stands beside.</summary>
    public static Measure Absent(string code, string unit, int filterClass, VehiclePulse pulse, string reason, double? atLeast = null) =>
        Blank(code, unit, filterClass, pulse) with
        {
            Absent = reason,
            Bounds = atLeast is { } least ? new(Digits.Round12(least), null, "from the samples before the time it is unfit from") : null,
        };

    private static Measure Blank(string code, string unit, int filterClass, VehiclePulse pulse) => new()
    {
        Code = code,
        Unit = unit,
        FilterClass = filterClass,
        Sources = pulse.Channels.Select(channel => channel.Code).ToList(),
        Bias = pulse.Channels.Select(channel => channel.Bias).OfType<BiasRemoved>().ToList(),
    };
}
