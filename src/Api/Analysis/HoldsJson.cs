using Toepan.Domain.Analysis.Holds;
using Toepan.Domain.Analysis.Keystones;
using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis;

/// <summary>Chances that a run's levels hold, as the contract writes them.</summary>
/// <param name="Holds">Chance that the overall level holds, each figure scattering for itself and all together; null where not rated.</param>
/// <param name="Levels">Chance of each overall level, best first.</param>
/// <param name="MostLikely">The figure most likely to change the overall level by itself.</param>
/// <param name="Repeat">What a repeat would be worth.</param>
/// <param name="ScatterUnknown">Figures kept as they are, since their scatter is not known.</param>
public sealed record HoldsJson(
    string Test, string Scheme, int Draws, int Seed, ProtectionLevel? Overall, string? NotRated, TwoChances? Holds, IReadOnlyList<LevelChance> Levels,
    IReadOnlyList<RegionHold> Regions, SensitivityRowJson? MostLikely, RepeatWorth? Repeat, IReadOnlyList<string> ScatterUnknown)
{
    public static HoldsJson Of(RunHolds run) => new(
        run.Test, run.Report.Scheme, run.Report.Draws, run.Report.Seed, run.Report.Overall, run.Report.NotRated, run.Report.Holds, run.Report.Levels,
        run.Report.Regions, run.MostLikely is { } row ? SensitivityRowJson.Of(row) : null, run.Report.Repeat, run.Report.Unknown);
}

/// <summary>How a figure scatters between runs: size is a CV (log-normal) or a standard deviation in its unit (normal).</summary>
public sealed record ScatterJson(ScatterKind Kind, double Size, string Source, int RepeatGroups)
{
    public static ScatterJson Of(Scatter scatter) => new(scatter.Kind, scatter.Size, scatter.Source, scatter.RepeatGroups);
}

/// <summary>One figure and the moves that change the overall level.</summary>
public sealed record SensitivityRowJson(
    string Measure, int? Position, string Unit, double Value, ScatterJson? Scatter, LevelMove? ToWorse, LevelMove? ToBetter, double? ChanceAlone)
{
    public static SensitivityRowJson Of(SensitivityRow row) => new(
        row.Input.Code, row.Input.Position, row.Input.Unit, row.Input.Value, row.Input.Scatter is { } scatter ? ScatterJson.Of(scatter) : null, row.ToWorse,
        row.ToBetter, row.ChanceAlone);
}

/// <summary>How far each figure would have to move, as the contract writes it.</summary>
/// <param name="Rows">Figures that alone can change the overall level, the most likely first.</param>
/// <param name="Fixed">Figures that alone cannot.</param>
/// <param name="Speed">What the impact speed could explain.</param>
public sealed record SensitivityJson(
    string Test, string Scheme, ProtectionLevel? Overall, string? NotRated, IReadOnlyList<SensitivityRowJson> Rows, IReadOnlyList<string> Fixed,
    SpeedExplanation? Speed)
{
    public static SensitivityJson Of(RunSensitivity run) => new(
        run.Test, run.Scheme, run.Report.Overall, run.Report.NotRated, [.. run.Report.Rows.Select(SensitivityRowJson.Of)], run.Report.Fixed, run.Report.Speed);
}

/// <summary>Each transducer and reference point left out, as the contract writes it.</summary>
public sealed record KeystonesJson(string Test, string Scheme, ProtectionLevel? Overall, string? NotRated, IReadOnlyList<Keystone> Items)
{
    public static KeystonesJson Of(RunKeystones run) => new(run.Test, run.Scheme, run.Report.Overall, run.Report.NotRated, run.Report.Items);
}
