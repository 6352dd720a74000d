using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Programme;

/// <summary>The rule of the programme: the first valid run rates; of two valid runs the lower.</summary>
public sealed class RatingRunsTests
{
    private static readonly DateOnly Day = new(2031, 3, 14);

    [Fact]
    public void Of_FirstValidRun_RatesAndNotTheOneBeforeIt() =>
        Assert.Equal("FO-002", RatingRuns.Of([new("FO-001", Day, false, 3), new("FO-002", Day.AddDays(9), true, 1)]));

    [Fact]
    public void Of_BetterRepeatOfAValidRun_ChangesNothing() =>
        Assert.Equal("FO-001", RatingRuns.Of([new("FO-001", Day, true, 2), new("FO-002", Day.AddDays(9), true, 0)]));

    [Fact]
    public void Of_WorseRepeatOfAValidRun_Rates() =>
        Assert.Equal("FO-002", RatingRuns.Of([new("FO-001", Day, true, 1), new("FO-002", Day.AddDays(9), true, 3)]));

    [Fact]
    public void Of_EqualRuns_TheFirstRates() =>
        Assert.Equal("FO-007", RatingRuns.Of([new("FO-001", Day.AddDays(1), true, 1), new("FO-007", Day, true, 1)]));

    [Fact]
    public void Of_NoneValidAndRated_IsNull() => Assert.Null(RatingRuns.Of([new("FO-001", Day, false, 0), new("FO-002", Day, true, null)]));
}
