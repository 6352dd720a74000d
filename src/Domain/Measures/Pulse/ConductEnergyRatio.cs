namespace Toepan.Domain.Measures.Pulse;

/// <summary>The kinetic energy of the run against that of the nominal run, whatever the mass.</summary>
/// <formula>(v / v_nominal)², v the mean of the speed readings, v_nominal the procedure's.</formula>
/// <window>None.</window>
/// <edges>Absent where no speed was recorded.</edges>
/// <sources>Textbook kinetic energy.</sources>
/// <confidence>Exact.</confidence>
/// <checks>The over-speed cases of the check cases (57/56, 65/64, 40 mph against 56 km/h).</checks>
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
