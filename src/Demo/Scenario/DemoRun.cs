using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Demo.Scenario;

/// <summary>One run of the scenario: which vehicle, how it was run, what went wrong with the instruments, what film showed.</summary>
public sealed record DemoRun
{
    public required int Number { get; init; }
    public required DemoVehicle Vehicle { get; init; }
    public required DateOnly Date { get; init; }

    /// <summary>Test code, FO-0001 to FO-0999.</summary>
    public string Test => $"FO-{Number:D4}";

    public string? RepeatOf { get; init; }
    public IReadOnlyList<Occupant> Occupants { get; init; } = [new(1, "driver", DummyType.H3)];
    public decimal[] SpeedKmh { get; init; } = [64.38m, 64.41m];
    public decimal? OverlapPercent { get; init; } = 40.1m;
    public decimal[] TemperatureC { get; init; } = [21.2m, 21.6m];

    /// <summary>Instrument defects, applied to the recorded channels.</summary>
    public IReadOnlyList<Defect> Defects { get; init; } = [];

    /// <summary>What film and inspection showed beyond the usual.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>A reference point that somebody moved between the two measurements, or null.</summary>
    public string? MovedReference { get; init; }
}

/// <summary>What can go wrong with a channel.</summary>
public enum DefectKind
{
    /// <summary>No signal: every sample the same.</summary>
    Dead,

    /// <summary>The transducer reached its stop.</summary>
    Clipped,

    /// <summary>Mounted or wired the wrong way round.</summary>
    Reversed,

    /// <summary>Not recorded at all.</summary>
    Missing,

    /// <summary>The record ends early.</summary>
    Ends,
}

/// <summary>A defect of the channels whose code starts as given.</summary>
/// <param name="CodeStart">First characters of the channel code.</param>
/// <param name="Kind">What is wrong.</param>
/// <param name="Level">For clipping: share of the true peak that is still recorded. For a record that ends: the time, s.</param>
public sealed record Defect(string CodeStart, DefectKind Kind, double Level = 0);
