namespace Toepan.Domain.Measures.Pulse;

/// <summary>The impact speed of the run.</summary>
/// <formula>The mean of all speed readings, km/h.</formula>
/// <window>None.</window>
/// <edges>Absent where no reading was recorded. Whether readings agree is a matter of conduct, not of this figure.</edges>
/// <sources>Methods edition 1; two independent systems are common practice, no source.</sources>
/// <confidence>Common practice.</confidence>
/// <checks>A mean by hand.</checks>
public sealed class ConductSpeed : IVehicleMeasure
{
    public const string Code = "conduct.speed";

    /// <inheritdoc/>
    public Measure Reduce(PulseContext context) => new()
    {
        Code = Code,
        Unit = "km/h",
        Value = Digits.Round12(context.SpeedKmh),
        Absent = context.SpeedKmh is null ? "no impact speed recorded" : null,
        Sources = [PulseContext.SpeedSource],
    };
}
