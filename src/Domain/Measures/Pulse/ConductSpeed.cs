namespace Toepan.Domain.Measures.Pulse;

/// <summary>
/// <c>conduct.speed</c>, km/h: the mean of all speed readings. Absent where none was recorded. Source: methods edition 1
/// (two independent systems are common practice, no source).
/// </summary>
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
