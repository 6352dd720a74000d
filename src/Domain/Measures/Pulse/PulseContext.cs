using Toepan.Domain.Channels;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Pulse;

/// <summary>What a vehicle measure may look at; the pulses are found once.</summary>
public sealed class PulseContext
{
    /// <summary>Class for integration to velocity and travel ([j211-1], from memory).</summary>
    public const int IntegrationClass = 180;

    /// <summary>Class for comparing whole pulses ([j211-1], from memory).</summary>
    public const int ShapeClass = 60;

    /// <summary>Where the impact speed comes from, as a measure's source.</summary>
    public const string SpeedSource = "conduct.impactSpeedKmh";

    private const double KmhPerMs = 3.6;

    private readonly Lazy<VehiclePulse> integration;
    private readonly Lazy<VehiclePulse> shape;

    public PulseContext(ConductReadings conduct, ProcedureEdition procedure, IChannelSource channels)
    {
        Procedure = procedure;
        SpeedKmh = conduct.ImpactSpeedKmh.Count == 0 ? null : conduct.ImpactSpeedKmh.Average(reading => (double)reading);
        integration = new(() => VehiclePulse.Find(channels, IntegrationClass));
        shape = new(() => VehiclePulse.Find(channels, ShapeClass));
    }

    public ProcedureEdition Procedure { get; }

    /// <summary>Mean of every speed reading, km/h; null where none was recorded.</summary>
    public double? SpeedKmh { get; }

    /// <summary>The same in m/s.</summary>
    public double? SpeedMs => SpeedKmh / KmhPerMs;

    /// <summary>The pulse at class 180.</summary>
    public VehiclePulse Integration => integration.Value;

    /// <summary>The pulse at class 60.</summary>
    public VehiclePulse Shape => shape.Value;

    /// <summary>Motion over the whole window; null where pulse or speed is missing.</summary>
    public VehicleMotion? Motion => Integration.History is { } history && SpeedMs is { } speed ? new(history, speed) : null;

    /// <summary>Motion up to the time an engineer trusts the pulse, where it is absent for that reason; else null.</summary>
    public VehicleMotion? PartialMotion => Integration.Partial is { } history && SpeedMs is { } speed ? new(history, speed) : null;

    /// <summary>Why there is no motion, or null.</summary>
    public string? NoMotion => Integration.Absent ?? (SpeedMs is null ? "no impact speed recorded" : null);
}
