using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Analysis.Signals;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis;

/// <summary>Runs of one vehicle side by side, as the contract writes them. Values stand in the order of the runs; the first run is the reference.</summary>
/// <param name="Measures">Measures of which at least two runs have a value.</param>
/// <param name="SignalStandard">What the signal scores rest on.</param>
/// <param name="Signals">Curves of each other run against the first run's.</param>
/// <param name="Parts">Whether structure, pulse and dummies repeat.</param>
/// <param name="Holds">For each run the chance that its levels hold in another one.</param>
public sealed record RepeatsJson(
    string Vehicle, string Procedure, string Scheme, IReadOnlyList<RepeatedRunJson> Tests, IReadOnlyList<RepeatedMeasure> Measures,
    SignalStandardJson SignalStandard, IReadOnlyList<SignalJson> Signals, IReadOnlyList<PartVerdict> Parts, IReadOnlyList<HoldsJson> Holds)
{
    public static RepeatsJson Of(Repeats repeats) => new(
        repeats.Vehicle.Key, repeats.Procedure, repeats.Scheme, [.. repeats.Runs.Select(RepeatedRunJson.Of)], repeats.Comparison.Measures,
        SignalStandardJson.Used, [.. repeats.Comparison.Curves.Select(SignalJson.Of)], repeats.Comparison.Parts,
        [.. repeats.Runs.Select(run => HoldsJson.Of(run.Holds))]);
}

/// <summary>One run; speed in km/h, energy ratio (v/v nominal)².</summary>
public sealed record RepeatedRunJson(string Test, DateOnly Date, string? RepeatOf, bool Valid, ProtectionLevel? Overall, double? SpeedKmh, double? EnergyRatio)
{
    public static RepeatedRunJson Of(RepeatedRun run) => new(
        run.Run.Test, run.Run.Date, run.Run.RepeatOf, run.Run.Valid, run.Run.Overall, run.SpeedKmh, run.EnergyRatio);
}

/// <summary>Standard, the edition it was written from, and the window asked for, s.</summary>
public sealed record SignalStandardJson(string Name, string Edition, double From, double To)
{
    public static SignalStandardJson Used { get; } = new(SignalComparison.Standard, SignalComparison.Edition, RepeatComparison.FromS, RepeatComparison.ToS);
}

/// <summary>One curve against the first run's: scores 0 … 1, rank 1 … 4, window and shift in s; or why there are none.</summary>
public sealed record SignalJson(
    string Key, string Name, int? Position, string Unit, string Reference, string Compared, double? From, double? To, double? Shift, double? Corridor,
    double? Phase, double? Magnitude, double? Slope, double? Overall, int? Rank, string? Absent)
{
    public static SignalJson Of(ComparedCurve curve)
    {
        var scores = curve.Answer.Scores;
        return new(
            curve.Key, curve.Name, curve.Position, curve.Unit, curve.Reference, curve.Compared, scores?.FromS, scores?.ToS, scores?.ShiftS, scores?.Corridor,
            scores?.Phase, scores?.Magnitude, scores?.Slope, scores?.Overall, scores?.Rank, curve.Answer.Absent);
    }
}
