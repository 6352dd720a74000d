namespace Toepan.Domain.Measures.Pulse;

/// <summary>
/// <c>conduct.energyratio</c>, dimensionless: (v/v_nominal)², v the mean of the speed readings, v_nominal the procedure's. Kinetic energy against
/// the nominal run, whatever the mass. Absent where no speed was recorded. Source: kinetic energy; check values standards.md §10.
/// </summary>
public sealed class ConductEnergyRatio : IVehicleMeasure
{
    public const string Code = "conduct.energyratio";

    /// <inheritdoc/>
    public Measure Reduce(PulseContext context)
    {
        var ratio = context.SpeedKmh / (double)context.Procedure.NominalSpeedKmh;
        return new()
        {
            Code = Code,
            Unit = string.Empty,
            Value = Digits.Round12(ratio * ratio),
            Absent = ratio is null ? "no impact speed recorded" : null,
            Sources = [PulseContext.SpeedSource],
        };
    }
}
