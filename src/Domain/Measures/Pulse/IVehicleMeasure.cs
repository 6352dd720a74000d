namespace Toepan.Domain.Measures.Pulse;

/// <summary>One measure of the vehicle's pulse or conduct. One file each, named after the measure.</summary>
public interface IVehicleMeasure
{
    /// <summary>The measure, present or absent with a reason.</summary>
    Measure Reduce(PulseContext context);
}

/// <summary>Every vehicle measure of edition 1 that needs no structure, in reporting order.</summary>
public static class PulseMeasures
{
    public static IReadOnlyList<IVehicleMeasure> All { get; } =
        [new ConductSpeed(), new ConductEnergyRatio(), new VehicleDeltaV(), new VehiclePeak(), new VehicleStroke(), new VehicleOlc()];
}
