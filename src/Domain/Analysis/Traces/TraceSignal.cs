using Toepan.Domain.Channels;

namespace Toepan.Domain.Analysis.Traces;

/// <summary>A trace worked out: samples over time in one unit.</summary>
/// <param name="History">Samples; NaN where one is missing.</param>
/// <param name="Unit">Unit; empty for none.</param>
public sealed record TraceSignal(TimeHistory History, string Unit);

/// <summary>A signal, or why there is none.</summary>
public sealed record TraceAnswer(TraceSignal? Signal, string? Absent);
