using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Programme;

public sealed class RepeatRulesTests
{
    [Theory]
    [InlineData(RepeatTrigger.ConductOutside, RepeatChoice.Repeat, false, true)]
    [InlineData(RepeatTrigger.ConductOutside, RepeatChoice.Leave, false, true)]
    [InlineData(RepeatTrigger.ConductOutside, RepeatChoice.Repeat, true, false)]
    [InlineData(RepeatTrigger.ResultDoubted, RepeatChoice.Repeat, true, false)]
    [InlineData(RepeatTrigger.ResultDoubted, RepeatChoice.Repeat, false, false)]
    [InlineData(RepeatTrigger.ResultDoubted, RepeatChoice.Leave, true, true)]
    [InlineData(RepeatTrigger.Confirmation, RepeatChoice.Repeat, true, true)]
    [InlineData(RepeatTrigger.DataLost, RepeatChoice.Repeat, true, true)]
    [InlineData(RepeatTrigger.EquipmentFault, RepeatChoice.Repeat, true, true)]
    [InlineData(RepeatTrigger.SpecimenFault, RepeatChoice.Repeat, false, true)]
    public void Refusal_TriggerAndChoice_AllowsOnlyWhatTheRunBears(RepeatTrigger trigger, RepeatChoice choice, bool valid, bool allowed) =>
        Assert.Equal(allowed, RepeatRules.Refusal(trigger, choice, new(valid, [])) is null);

    [Fact]
    public void Refusal_ResultOfAValidRun_SaysThatItIsNeverReplaced() => Assert.Contains(
        "never replaces a valid run because of its result",
        RepeatRules.Refusal(RepeatTrigger.ResultDoubted, RepeatChoice.Repeat, new(true, [])), StringComparison.Ordinal);

    [Theory]
    [InlineData(RepeatTrigger.ConductOutside)]
    [InlineData(RepeatTrigger.Confirmation)]
    public void Refusal_RepeatedAlready_NamesTheRepeatWhateverTheTrigger(RepeatTrigger trigger) => Assert.StartsWith(
        "FO-0009 repeats it already", RepeatRules.Refusal(trigger, RepeatChoice.Repeat, new(false, ["FO-0009"])), StringComparison.Ordinal);

    [Fact]
    public void Consequence_RepeatOfAValidRun_KeepsBoth() =>
        Assert.Contains("lower one rates", RepeatRules.Consequence(RepeatChoice.Repeat, valid: true), StringComparison.Ordinal);
}
