namespace Toepan.Domain.Analysis.Traces;

/// <summary>One function of the trace grammar.</summary>
/// <param name="Name">As it is written.</param>
/// <param name="LeastArguments">Fewest traces.</param>
/// <param name="MostArguments">Most traces.</param>
/// <param name="Number">Whether a number may or must follow the traces: null = none, false = may, true = must.</param>
/// <param name="Says">What it does, for help.</param>
public sealed record TraceFunction(string Name, int LeastArguments, int MostArguments, bool? Number, string Says)
{
    /// <summary>Most traces of one function.</summary>
    public const int Many = 6;

    public static TraceFunction Resultant { get; } = new("res", 2, Many, null, "resultant, √(a² + b² + …)");
    public static TraceFunction Integral { get; } = new("int", 1, 1, false, "integral over time by the trapezoid rule, zero (or the number given) at contact");
    public static TraceFunction Difference { get; } = new("diff", 2, 2, null, "a − b");
    public static TraceFunction Sum { get; } = new("sum", 2, Many, null, "a + b + …");
    public static TraceFunction Mean { get; } = new("mean", 2, Many, null, "(a + b + …) / n");
    public static TraceFunction Negative { get; } = new("neg", 1, 1, null, "−a");
    public static TraceFunction Scaled { get; } = new("scale", 1, 1, true, "a × the number given");
    public static TraceFunction Condyle { get; } = new("condyle", 2, 2, null, "neck moment at the condyle from cell moment y and force x");
    public static TraceFunction TibiaIndex { get; } = new("tibia", 3, 3, null, "tibia index from moment x, moment y and force z");

    /// <summary>All of them, as help lists them.</summary>
    public static IReadOnlyList<TraceFunction> All { get; } = [Resultant, Integral, Difference, Sum, Mean, Negative, Scaled, Condyle, TibiaIndex];
}
