namespace Toepan.Domain.Programme;

/// <summary>What the laboratory recorded of how the run was done. Null or empty = not recorded.</summary>
public sealed record ConductReadings
{
    /// <summary>Every speed reading, km/h, in the order recorded (two independent systems are common practice).</summary>
    public required IReadOnlyList<decimal> ImpactSpeedKmh { get; init; }

    /// <summary>Overlap with the barrier, per cent of vehicle width.</summary>
    public decimal? OverlapPercent { get; init; }

    /// <summary>Mass of the specimen as tested, kg.</summary>
    public decimal? TestMassKg { get; init; }

    /// <summary>Mass the test was declared for, kg.</summary>
    public decimal? DeclaredTestMassKg { get; init; }

    /// <summary>Every dummy temperature reading, °C.</summary>
    public IReadOnlyList<decimal> DummyTemperatureC { get; init; } = [];

    /// <summary>Impact angle, degrees from head-on.</summary>
    public decimal? ImpactAngleDeg { get; init; }

    /// <summary>Vertical alignment of vehicle to barrier, mm.</summary>
    public decimal? VerticalAlignmentMm { get; init; }
}
