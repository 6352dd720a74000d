using System.Globalization;

namespace Toepan.Domain.Analysis.Traces;

/// <summary>What a trace is made of: one channel, or a function of other traces. <see cref="object.ToString"/> writes it as <see cref="TraceParser"/> reads it.</summary>
public abstract record TraceExpression
{
    /// <summary>Every channel in it, in reading order.</summary>
    public abstract IEnumerable<ChannelTrace> Channels { get; }

    /// <summary>The same expression with each channel replaced.</summary>
    public abstract TraceExpression Replace(Func<ChannelTrace, ChannelTrace> change);
}

/// <summary>One channel of one run.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Code">Channel code, upper case.</param>
/// <param name="FilterClass">60, 180, 600 or 1000; null = as recorded.</param>
public sealed record ChannelTrace(string Test, string Code, int? FilterClass) : TraceExpression
{
    public override IEnumerable<ChannelTrace> Channels => [this];

    public override TraceExpression Replace(Func<ChannelTrace, ChannelTrace> change) => change(this);

    public override string ToString() =>
        FilterClass is { } filterClass ? string.Create(CultureInfo.InvariantCulture, $"{Test}/{Code}@{filterClass}") : $"{Test}/{Code}";
}

/// <summary>A function of traces.</summary>
/// <param name="Function">Which.</param>
/// <param name="Arguments">Its traces, in order.</param>
/// <param name="Number">Its number (value at contact, factor), or null.</param>
public sealed record FunctionTrace(TraceFunction Function, IReadOnlyList<TraceExpression> Arguments, double? Number) : TraceExpression
{
    public override IEnumerable<ChannelTrace> Channels => Arguments.SelectMany(argument => argument.Channels);

    public override TraceExpression Replace(Func<ChannelTrace, ChannelTrace> change) =>
        this with { Arguments = [.. Arguments.Select(argument => argument.Replace(change))] };

    public bool Equals(FunctionTrace? other) => other is not null && ToString() == other.ToString();

    public override int GetHashCode() => ToString().GetHashCode(StringComparison.Ordinal);

    public override string ToString()
    {
        var parts = Arguments.Select(argument => argument.ToString());
        var number = Number?.ToString("R", CultureInfo.InvariantCulture);
        return $"{Function.Name}({string.Join(",", number is null ? parts : parts.Append(number))})";
    }
}

/// <summary>An expression and by how much it is drawn later.</summary>
/// <param name="Expression">What is drawn.</param>
/// <param name="ShiftMs">Added to every time, ms; 0 = aligned at contact.</param>
public sealed record Trace(TraceExpression Expression, double ShiftMs)
{
    /// <summary>The run, where all channels are of one.</summary>
    public string? OnlyTest => Expression.Channels.Select(channel => channel.Test).Distinct(StringComparer.Ordinal).ToArray() is [var only] ? only : null;

    public override string ToString() =>
        ShiftMs == 0 ? Expression.ToString()! : string.Create(CultureInfo.InvariantCulture, $"{Expression}~{ShiftMs:R}");
}
