using Toepan.Domain.Analysis.Traces;
using Toepan.Domain.Channels;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Traces;

/// <summary>Functions of traces against closed forms.</summary>
public sealed class TraceEvaluatorTests
{
    private static readonly Dictionary<string, TraceSignal> Signals = new()
    {
        ["A"] = Signal(_ => 3, "g"), ["B"] = Signal(_ => 4, "g"), ["N"] = Signal(t => t > 0.1 ? double.NaN : 1, "g"), ["F"] = Signal(_ => 2, "kN"),
        ["LATE"] = new(new TimeHistory(-0.04, 1e-4, Enumerable.Range(0, 2_000).Select(i => (double)i).ToArray()), "g"),
        ["COARSE"] = new(new TimeHistory(-0.05, 2e-4, new double[100]), "g"), ["BETWEEN"] = new(new TimeHistory(-0.05003, 1e-4, new double[100]), "g"),
        ["11NECKUP00H3MOYP"] = Signal(_ => 50, "N·m"), ["11NECKUP00H3FOXP"] = Signal(_ => 1, "kN"),
        ["11TIBILEUPH3MOXP"] = Signal(_ => 90, "N·m"), ["11TIBILEUPH3MOYP"] = Signal(_ => 120, "N·m"), ["11TIBILEUPH3FOZP"] = Signal(_ => -3.59, "kN"),
    };

    [Theory]
    [InlineData("res(T-1/A,T-1/B)", 5, "g")]
    [InlineData("diff(T-1/A,T-1/B)", -1, "g")]
    [InlineData("sum(T-1/A,T-1/B)", 7, "g")]
    [InlineData("mean(T-1/A,T-1/B)", 3.5, "g")]
    [InlineData("neg(T-1/A)", -3, "g")]
    [InlineData("scale(T-1/A,-0.5)", -1.5, "g")]
    [InlineData("condyle(T-1/11NECKUP00H3MOYP,T-1/11NECKUP00H3FOXP)", 50 - 17.78, "N·m")] // My − d·Fx, d = 0.01778 m
    [InlineData("tibia(T-1/11TIBILEUPH3MOXP,T-1/11TIBILEUPH3MOYP,T-1/11TIBILEUPH3FOZP)", (150 / 225.0) + 0.1, "")] // UN R94 Annex 4: 225 N·m, 35.9 kN
    [InlineData("int(T-1/A)", 3 * 9.80665 * 0.1, "m/s")] // constant 3 g for 0.1 s from rest at contact
    [InlineData("int(T-1/A,-2)", (3 * 9.80665 * 0.1) - 2, "m/s")]
    [InlineData("int(int(T-1/A))", 1000 * 3 * 9.80665 * 0.01 / 2, "mm")] // ½·a·t²; the trapezoid rule is exact for a straight line
    [InlineData("int(T-1/F)", 0.2, "kN·s")]
    public void Evaluate_Function_AgreesWithTheClosedForm(string text, double at100Ms, string unit)
    {
        var signal = Evaluate(text).Signal!;

        Assert.Equal(unit, signal.Unit);
        Assert.Equal(at100Ms, signal.History.Values.Span[1_500], 1e-9);
        Assert.Equal(0.1, signal.History.TimeAt(1_500), 1e-12);
    }

    [Fact]
    public void Evaluate_IntegralBeforeContact_IsNegativeOfWhatIsStillToCome() =>
        Assert.Equal(-3 * 9.80665 * 0.05, Evaluate("int(T-1/A)").Signal!.History.Values.Span[0], 1e-9);

    [Fact]
    public void Evaluate_LaterStart_IsCombinedOnCommonSamples()
    {
        var history = Evaluate("sum(T-1/A,T-1/LATE)").Signal!.History;

        Assert.Equal((-0.04, 2_000), (Math.Round(history.StartS, 9), history.Count));
        Assert.Equal(3 + 7, history.Values.Span[7]);
    }

    [Fact]
    public void Evaluate_Gap_StaysAGap() => Assert.True(double.IsNaN(Evaluate("res(T-1/A,T-1/N)").Signal!.History.Values.Span[2_000]));

    [Theory]
    [InlineData("res(T-1/A,T-1/F)", "the units differ: g, kN")]
    [InlineData("diff(T-1/A,T-1/COARSE)", "0.0001 s and 0.0002 s apart")]
    [InlineData("diff(T-1/A,T-1/BETWEEN)", "no whole number of samples")]
    [InlineData("res(T-1/A,T-1/NONE)", "no channel")]
    [InlineData("condyle(T-1/F,T-1/F)", "takes N·m, kN, given kN, kN")]
    [InlineData("tibia(T-1/11TIBILEUPH3MOXP,T-1/11TIBILEUPH3MOYP,T-1/F)", "do not name one dummy")]
    public void Evaluate_WhatCannotBeCombined_SaysWhy(string text, string reason)
    {
        var answer = Evaluate(text);

        Assert.Null(answer.Signal);
        Assert.Contains(reason, answer.Absent, StringComparison.Ordinal);
    }

    private static TraceAnswer Evaluate(string text) => new TraceEvaluator(channel =>
        Signals.TryGetValue(channel.Code, out var signal) ? new(signal, null) : new(null, $"no channel {channel.Code}")).Evaluate(TraceParser.Read(text).Trace!.Expression);

    private static TraceSignal Signal(Func<double, double> value, string unit) =>
        new(new TimeHistory(-0.05, 1e-4, Enumerable.Range(0, 3_000).Select(i => value(-0.05 + (i * 1e-4))).ToArray()), unit);
}
