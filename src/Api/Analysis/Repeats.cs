using Toepan.Api.Programme;
using Toepan.Domain.Analysis;
using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Measures;

namespace Toepan.Api.Analysis;

/// <summary>One run beside the others.</summary>
/// <param name="Run">The run as lists show it.</param>
/// <param name="SpeedKmh">Impact speed, or null.</param>
/// <param name="EnergyRatio">(v/v nominal)², or null.</param>
/// <param name="Structure">Alignment and displacements.</param>
/// <param name="Curves">Curves for overlays, filtered as the measures are.</param>
/// <param name="Holds">Chance that its levels hold in a repeated run.</param>
public sealed record RepeatedRun(
    TestRunSummary Run, double? SpeedKmh, double? EnergyRatio, StructureResult Structure, IReadOnlyList<CurveSet> Curves, RunHolds Holds);

/// <summary>Runs of one vehicle by one procedure side by side; the first is the reference.</summary>
public sealed record Repeats(VehicleName Vehicle, string Procedure, string Scheme, IReadOnlyList<RepeatedRun> Runs, RepeatComparison Comparison);
