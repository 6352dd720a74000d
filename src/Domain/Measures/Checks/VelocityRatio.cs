namespace Toepan.Domain.Measures.Checks;

/// <summary>(v0 − v_min)/v0 of the vehicle channel, class 180: 1.00 to 1.25. Below 1 the vehicle never stopped, above 1.25 it rebounded too fast: gain, offset or sign.</summary>
public sealed class VelocityRatio : ICrossCheck
{
    public const string Check = "vehicle.velocity-ratio";
    public const double Lower = 1.00;
    public const double Upper = 1.25;
    private const string Expectation = "1.00 to 1.25";

    /// <inheritdoc/>
    public IEnumerable<CrossCheck> Run(CheckContext context)
    {
        if (context.Pulse.Motion is not { } motion || motion.ImpactSpeedMs <= 0)
        {
            yield return CrossChecks.NotCheckable(Check, null, string.Empty, Expectation, context.Pulse.NoMotion ?? "the impact speed is zero");
            yield break;
        }

        var ratio = (motion.ImpactSpeedMs - motion.VelocityMs.Span[motion.SlowestAt]) / motion.ImpactSpeedMs;
        yield return CrossChecks.Judge(
            Check, null, ratio, string.Empty, Expectation, ratio is >= Lower and <= Upper, "Speed change of the vehicle channel over the impact speed.");
    }
}
