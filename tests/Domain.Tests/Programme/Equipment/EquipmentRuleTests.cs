using Toepan.Domain.Programme.Equipment;
using Xunit;

namespace Toepan.Domain.Tests.Programme.Equipment;

public sealed class EquipmentRuleTests
{
    private static readonly DateOnly Day = new(2031, 3, 14);

    [Theory]
    [InlineData(-30, 0, null)]
    [InlineData(0, 30, null)]
    [InlineData(-30, -1, "was due on 2031-03-13")]
    [InlineData(1, 300, "no calibration on record")]
    public void Fault_BoundsOfTheCalibration_AreInclusive(int doneAfterDays, int dueAfterDays, string? fault)
    {
        var found = Calibration.Fault([new(Day.AddDays(doneAfterDays), Day.AddDays(dueAfterDays), "C")], Day);

        Assert.Equal(fault is null, found is null);
        Assert.Contains(fault ?? "", found ?? "", StringComparison.Ordinal);
    }

    [Fact]
    public void Fault_LaterCalibrationOfShorterReach_Counts() =>
        Assert.NotNull(Calibration.Fault([new(Day.AddDays(-300), Day.AddDays(60), "old"), new(Day.AddDays(-60), Day.AddDays(-1), "new")], Day));

    [Theory]
    [InlineData("+0 -5", false)]
    [InlineData("-5", true)]
    [InlineData("-0", true)]
    [InlineData("+3 -5", false)]
    [InlineData("-3 +5", true)]
    [InlineData("", false)]
    public void InDoubt_FirstCheckSinceTheRun_Decides(string checks, bool expected)
    {
        // "+3": passed three days after the run, "-5": failed five days after it.
        var list = checks.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select((text, i) => new DummyCheck(i + 1, 1, DummyPart.Chest, text[0] == '+', Day.AddDays(text[1] - '0'), DateTimeOffset.UnixEpoch));

        Assert.Equal(expected, DummyCheckRules.InDoubt(list, Day).Count == 1);
    }

    [Theory]
    [InlineData("chest.deflection", DummyPart.Chest)]
    [InlineData("knee.left.slide", DummyPart.ThighLeft)]
    [InlineData("tibia.right.upper.index", DummyPart.LowerLegRight)]
    [InlineData("risk.lowerleg.left", DummyPart.LowerLegLeft)]
    public void PartOf_Measure_IsWhereItIsTaken(string code, DummyPart part) => Assert.Equal(part, DummyParts.Of(code));

    [Fact]
    public void PartOf_JointRisk_IsNone() => Assert.Null(DummyParts.Of("risk.joint"));
}
