namespace Toepan.Domain.Measures.Injury;

/// <summary>A load of a region with the curve that turns it into a risk.</summary>
/// <param name="Name">What the load is called beside the risk: the measure's code, or the injury it stands for.</param>
internal sealed record RiskInput(string Name, RiskFunction Function, Measure Load)
{
    public double? Risk => Load.Value is { } load ? Function.Evaluate(load) : null;

    /// <summary>The risk the load certainly reaches: 0 where nothing is known of it.</summary>
    public double AtLeast => (Load.Bounds is { } bounds ? bounds.AtLeast : Load.Value) is { } least ? Function.Evaluate(least) : 0;
}
