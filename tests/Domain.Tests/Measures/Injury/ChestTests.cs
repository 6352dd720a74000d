using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Measures.Injury;

public sealed class ChestTests
{
    private const double PeakMm = 50;
    private const double DurationS = 0.1;

    private static double Pressed(double t) => -PeakMm * Math.Pow(Math.Sin(Math.PI * t / DurationS), 2);

    // standards.md §16 case 4: five-point rule on samples, 50th percentile, at i = 333.
    [Fact]
    public void Viscous_SquaredSine_MeetsSampledCheckCase()
    {
        var measure = new FakeChannels(10_000).With("CHST0000", "DSX", 1001, Pressed).Reduce("chest.viscous");

        Near.To(0.28959279, measure.Value, Near.EightDecimals);
        Near.To(0.0333, measure.FromS, 1e-12);
    }

    // SF · D²/D0 · π/T · 3√3/8 (standards.md §16 case 4); at 200 kHz the rate rule and the grid are within 1e-8 of it.
    [Theory]
    [InlineData(DummyType.H3, 0.28959406)]
    [InlineData(DummyType.HF, 0.35463657)]
    public void Viscous_SquaredSine_MeetsClosedForm(DummyType dummy, double expected)
    {
        var measure = new FakeChannels(200_000).With("CHST0000", "DSX", 20_001, Pressed).Reduce("chest.viscous", dummy);

        Near.To(expected, measure.Value, 2e-8);
    }

    [Fact]
    public void Viscous_ReleasedFasterThanPressed_CountsTheRelease()
    {
        var pressing = new FakeChannels(10_000).With("CHST0000", "DSX", 1001, Pressed);
        var both = new FakeChannels(10_000).With("CHST0000", "DSX", 1001, t => t <= 0.05 ? Pressed(t) : Pressed(0.05 + Math.Min(2 * (t - 0.05), 0.05)));

        Near.Relative(2 * pressing.Reduce("chest.viscous").Value!.Value, both.Reduce("chest.viscous").Value, 1e-3);
    }

    [Fact]
    public void Viscous_FewerThanFiveSamples_IsAbsent()
    {
        Assert.NotNull(new FakeChannels(10_000).With("CHST0000", "DSX", [0, -1, -2, -1]).Reduce("chest.viscous").Absent);
        Assert.Equal(0, new FakeChannels(10_000).With("CHST0000", "DSX", [0, -1, -2, -1, 0]).Reduce("chest.viscous").Value);
    }

    [Fact]
    public void Deflection_TakesCompressionOnly()
    {
        var measure = new FakeChannels(10_000).With("CHST0000", "DSX", [0, -10, 30, -42, 5]).Reduce("chest.deflection");

        Assert.Equal(42, measure.Value);
        Near.To(3e-4, measure.FromS, 1e-15);
    }

    [Theory]
    [InlineData(DummyType.H3, 180)]
    [InlineData(DummyType.HF, 600)]
    public void Deflection_ClassFollowsDummy(DummyType dummy, int filterClass)
    {
        var channels = new FakeChannels(10_000).With("CHST0000", "DSX", 1001, Pressed);

        Assert.Equal(filterClass, channels.Reduce("chest.deflection", dummy).FilterClass);
        Assert.Equal(filterClass, channels.Reduce("chest.viscous", dummy).FilterClass);
    }

    // Methods edition 1, settled readings: with both, 0003; an unfit 0003 is not replaced.
    [Fact]
    public void Deflection_BothLocations_Takes0003EvenWhenUnfit()
    {
        var both = new FakeChannels(10_000).With("CHST0000", "DSX", [0, -50, 0, 0, 0]).With("CHST0003", "DSX", [0, -20, 0, 0, 0]);
        var unfit = new FakeChannels(10_000).With("CHST0000", "DSX", [0, -50, 0, 0, 0]).Unfit("CHST0003", "DSX");

        Assert.Equal(20, both.Reduce("chest.deflection").Value);
        Assert.Contains("CHST0003", unfit.Reduce("chest.deflection").Absent, StringComparison.Ordinal);
    }
}
