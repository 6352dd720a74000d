using Toepan.Api.Channels;
using Toepan.Api.Programme.Equipment;
using Toepan.Domain.Measures;

namespace Toepan.Api.Measures;

/// <summary>A measure as the contract writes it.</summary>
/// <param name="Code">Measure code.</param>
/// <param name="Position">Seat position; null for the vehicle.</param>
/// <param name="Value">Value; null where absent.</param>
/// <param name="Unit">Unit; empty = dimensionless.</param>
/// <param name="From">Start of the window or the instant, s.</param>
/// <param name="To">End of the window or the instant, s.</param>
/// <param name="Sources">Channel codes or point names.</param>
/// <param name="Absent">Why there is no value, or null.</param>
/// <param name="Detail">What kind of maximum it was, or null.</param>
/// <param name="Bounds">What can be said where the value is not known, or is only a bound.</param>
/// <param name="FilterClass">Channel frequency class of the inputs.</param>
/// <param name="Bias">Zero offsets removed from the inputs.</param>
/// <param name="Uncertainty">Standard uncertainty in the unit.</param>
/// <param name="MethodEdition">Method edition.</param>
/// <param name="InDoubt">Why the dummy's part it is taken in is in doubt (a failed check), or null.</param>
public sealed record MeasureJson(
    string Code, int? Position, double? Value, string Unit, double? From, double? To, IReadOnlyList<string> Sources, string? Absent,
    string? Detail, MeasureBounds? Bounds, int? FilterClass, IReadOnlyList<BiasJson> Bias, double? Uncertainty, string MethodEdition,
    string? InDoubt = null)
{
    public static MeasureJson Of(Measure measure, IReadOnlyList<PartInDoubt> inDoubt) =>
        Of(measure) with { InDoubt = inDoubt.FirstOrDefault(doubt => doubt.Covers(measure.Code, measure.Position))?.Text };

    public static MeasureJson Of(Measure measure) => new(
        measure.Code, measure.Position, measure.Value, measure.Unit, measure.FromS, measure.ToS, measure.Sources, measure.Absent,
        measure.Detail, measure.Bounds, measure.FilterClass, [.. measure.Bias.Select(BiasJson.Of)], measure.Uncertainty,
        measure.MethodEdition);
}

/// <summary>A zero offset removed from a channel: value in its working unit, and the window it was taken from, s.</summary>
public sealed record BiasJson(string Channel, double Value, double From, double To)
{
    public static BiasJson Of(BiasRemoved bias) => new(bias.Channel, bias.Value, Instants.Of(bias.FromS), Instants.Of(bias.ToS));
}
