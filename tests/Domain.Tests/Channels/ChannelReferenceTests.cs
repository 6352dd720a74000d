using Toepan.Domain.Channels;
using Xunit;

namespace Toepan.Domain.Tests.Channels;

/// <summary>Against scipy 1.10.1 filtfilt and cumulative_trapezoid, 240 signals a method, 4 to 1503 samples, 10 to 100 kHz; relative difference at most 1e-9.</summary>
public sealed class ChannelReferenceTests
{
    private const double Tolerance = 1e-9;

    [Theory]
    [InlineData(60)]
    [InlineData(180)]
    [InlineData(600)]
    [InlineData(1000)]
    public void Apply_RandomSignals_AgreesWithScipyFiltfilt(int filterClass)
    {
        var cases = ChannelReference.Cases().ToList();

        Assert.True(cases.Count >= 200);
        Assert.All(cases, one => Assert.InRange(
            one.Deviation($"cfc{filterClass}", CfcFilter.Apply(one.Signal, 1 / one.RateHz, filterClass)), 0, Tolerance));
    }

    [Fact]
    public void Cumulative_RandomSignals_AgreesWithScipyTrapezoid()
    {
        var cases = ChannelReference.Cases().ToList();

        Assert.True(cases.Count >= 200);
        Assert.All(cases, one => Assert.InRange(one.Deviation("integral", Integral.Cumulative(one.Signal, 1 / one.RateHz)), 0, Tolerance));
    }
}
