using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Measures.Injury;

public sealed class LowerLegTests
{
    // standards.md §16 case 7: (Mx, My N·m, Fz N) → TI of both dummies, revised index (12 kN, 240 N·m).
    [Theory]
    [InlineData(100, 150, -4000, 0.91265423, 1.74230348, 1.08448985)]
    [InlineData(0, 225, 0, 1.00000000, 1.95652174, 0.93750000)]
    [InlineData(-80, 60, -8000, 0.66728567, 1.21891020, 1.08333333)]
    public void Index_OneInstant_MeetsCheckCase(double mxNm, double myNm, double fzN, double index50, double index5, double revised)
    {
        var channels = new FakeChannels(10_000).Tibia("LEUP", 3, _ => mxNm, _ => myNm, _ => fzN).Tibia("LELO", 3, _ => 0, _ => 0, _ => 0);

        Near.To(index50, channels.Reduce("tibia.left.upper.index").Value, Near.EightDecimals);
        Near.To(index5, channels.Reduce("tibia.left.upper.index", DummyType.HF).Value, Near.EightDecimals);
        var shaft = RiskFunctions.Get(RiskFunctions.Shaft, DummyType.H3);
        // The shaft takes |Fz|; pulling instead of pushing keeps ankle and plateau out of the largest.
        var risk = new FakeChannels(10_000).Tibia("LEUP", 3, _ => mxNm, _ => myNm, _ => -fzN).Tibia("LELO", 3, _ => 0, _ => 0, _ => 0).Reduce("risk.lowerleg.left");
        Assert.Equal("shaft", risk.Detail);
        Near.To(shaft.Evaluate(revised), risk.Value, 2e-8);
    }

    // standards.md §16 case 7, history: same instant, not separate maxima (0.74490830 would be wrong).
    [Fact]
    public void Index_SineHistory_MeetsCheckCase()
    {
        var measure = new FakeChannels(10_000).Tibia(
            "RILO", 1001, t => 120 * Math.Sin(Math.PI * t / 0.1), t => -90 * Math.Sin(2 * Math.PI * t / 0.1), t => t <= 0.08 ? -6000 * Math.Sin(Math.PI * t / 0.08) : 0)
            .Reduce("tibia.right.lower.index");

        Near.To(0.73915134, measure.Value, Near.EightDecimals);
        Near.To(0.0342, measure.FromS, 1e-12);
    }

    [Fact]
    public void Index_CellWithoutForce_BorrowsTheOtherAndSaysSo()
    {
        var channels = new FakeChannels(10_000)
            .With("TIBILEUP", "MOX", 3, _ => 225).With("TIBILEUP", "MOY", 3, _ => 0).With("TIBILELO", "FOZ", 3, _ => -3.59);

        var measure = channels.Reduce("tibia.left.upper.index");

        Near.Relative(1.1, measure.Value, 1e-12);
        Assert.Equal("axial force of the lower cell", measure.Detail);
        Assert.Contains("11TIBILELOH3FOZ0", measure.Sources);
    }

    [Fact]
    public void Index_UnfitForce_IsNotReplaced()
    {
        var channels = new FakeChannels(10_000).Tibia("LELO", 3, _ => 0, _ => 0, _ => -3000)
            .With("TIBILEUP", "MOX", 3, _ => 225).With("TIBILEUP", "MOY", 3, _ => 0).Unfit("TIBILEUP", "FOZ");

        var measure = channels.Reduce("tibia.left.upper.index");

        Assert.Contains("11TIBILEUPH3FOZ0", measure.Absent, StringComparison.Ordinal);
        Assert.Equal(1, measure.Bounds?.AtLeast);
    }

    [Fact]
    public void Compression_TakesTheLargerOfTheCellsPresent()
    {
        var upperOnly = new FakeChannels(10_000).With("TIBIRIUP", "FOZ", [0, -2, 5]);
        var both = new FakeChannels(10_000).With("TIBIRIUP", "FOZ", [0, -2, 5]).With("TIBIRILO", "FOZ", [0, 0, -3]);
        var oneUnfit = new FakeChannels(10_000).With("TIBIRIUP", "FOZ", [0, -2, 5]).Unfit("TIBIRILO", "FOZ");

        Assert.Equal(2, upperOnly.Reduce("tibia.right.compression").Value);
        Assert.Equal(3, both.Reduce("tibia.right.compression").Value);
        Assert.Equal("lower cell", both.Reduce("tibia.right.compression").Detail);
        Assert.Contains("RILO", oneUnfit.Reduce("tibia.right.compression").Absent, StringComparison.Ordinal);
        Assert.Equal(2, oneUnfit.Reduce("tibia.right.compression").Bounds?.AtLeast);
        Assert.NotNull(new FakeChannels(10_000).Reduce("tibia.right.compression").Absent);
    }

    [Fact]
    public void FemurAndKnee_TakeTheirOwnSign()
    {
        var channels = new FakeChannels(10_000).With("FEMRRI00", "FOZ", [0, 9, -6.5, 0]).With("KNSLLE00", "DSX", [0, 20, -7, 0]);

        Assert.Equal(6.5, channels.Reduce("femur.right.compression").Value);
        Assert.Equal(7, channels.Reduce("knee.left.slide").Value);
        Assert.NotNull(channels.Reduce("femur.left.compression").Absent);
    }

    // A pull on the lower leg loads the shaft by |Fz| but neither ankle nor plateau (methods edition 1, settled readings).
    [Fact]
    public void Risk_TensionInTheTibia_LoadsTheShaftOnly()
    {
        var channels = new FakeChannels(10_000).Tibia("LEUP", 3, _ => 0, _ => 0, _ => 12_000).Tibia("LELO", 3, _ => 0, _ => 0, _ => 0);

        var risk = channels.Reduce("risk.lowerleg.left");

        Assert.Equal("shaft", risk.Detail);
        Near.To(0.28186341, risk.Value, Near.EightDecimals);
    }

    [Fact]
    public void Risk_OneCellOnly_NeedsAProcedureThatHasOne()
    {
        var channels = new FakeChannels(10_000).Tibia("LEUP", 3, _ => 10, _ => 10, _ => -4000);

        Assert.Contains("ankle", channels.Reduce("risk.lowerleg.left").Absent, StringComparison.Ordinal);
        var risk = channels.Reduce("risk.lowerleg.left", bothTibiaCells: false);
        Assert.Equal("plateau", risk.Detail);
        Near.To(0.08395381, risk.Value, Near.EightDecimals);
    }

    [Fact]
    public void Risk_OneCellsMomentUnfit_StandsOnTheOtherWithABound()
    {
        var channels = new FakeChannels(10_000).Tibia("LEUP", 3, _ => 200, _ => 10, _ => -4000)
            .Unfit("TIBILELO", "MOX").With("TIBILELO", "MOY", 3, _ => 0).With("TIBILELO", "FOZ", 3, _ => -1);

        var risk = channels.Reduce("risk.lowerleg.left");

        Assert.Equal("shaft", risk.Detail);
        Assert.Equal(risk.Value, risk.Bounds?.AtLeast);
        Assert.Equal(1, risk.Bounds?.AtMost);
    }

    [Fact]
    public void Risk_SmallWomanDummy_IsAbsentWithTheReason()
    {
        var channels = new FakeChannels(10_000).Tibia("LEUP", 3, _ => 10, _ => 10, _ => -4000).Tibia("LELO", 3, _ => 0, _ => 0, _ => 0);

        var risk = channels.Reduce("risk.lowerleg.left", DummyType.HF);

        Assert.Contains("no lower-leg risk is published here", risk.Absent, StringComparison.Ordinal);
        Assert.Null(risk.Bounds);
    }
}
