using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Programme;

/// <summary>Bounds: dummy temperature 20.6 to 22.2 °C (49 CFR 571.208 S16.2.8), honeycomb 0.308 to 0.342 MPa (49 CFR 587.15).</summary>
public sealed class PreparationJudgeTests
{
    private static readonly ProcedureEdition Procedure = ProcedureLibrary.Find("offset-frontal-64", 1)!;

    [Theory]
    [InlineData("0.342", Verdict.Within, "0.000")]
    [InlineData("0.343", Verdict.Outside, "-0.001")]
    [InlineData("0.308", Verdict.Within, "0.000")]
    public void Judge_BarrierStrength_HoldsItAgainstInclusiveBounds(string text, Verdict verdict, string margin)
    {
        var judged = PreparationJudge.Judge(Item("barrier-strength"), text);

        Assert.Equal((verdict, decimal.Parse(margin, System.Globalization.CultureInfo.InvariantCulture)), (judged.Verdict, judged.Margin!.Value));
    }

    [Fact]
    public void Judge_Log_ShowsTheReadingFurthestOut()
    {
        var judged = PreparationJudge.Judge(Item("soak-log"), "2031-03-13T18:00 21.0\n2031-03-14T02:00 22.5\n2031-03-14T06:00 21.5");

        Assert.Equal((Verdict.Outside, 22.5m, -0.3m), (judged.Verdict, judged.Reading, judged.Margin));
    }

    [Fact]
    public void Judge_NothingWritten_IsNotRecorded() => Assert.Equal(Verdict.NotRecorded, PreparationJudge.Judge(Item("head-to-wheel"), " ").Verdict);

    [Theory]
    [InlineData("head-to-wheel", "30 cm")]
    [InlineData("head-to-wheel", "1,5")]
    [InlineData("soak-log", "at night 21.0")]
    [InlineData("soak-log", "2031-03-13T18:00 21.0\n2031-03-13T17:00 21.0")]
    public void Fault_WhatCannotBeRead_IsSaid(string item, string text) => Assert.NotNull(PreparationJudge.Fault(Item(item), text));

    [Theory]
    [InlineData("head-to-wheel", "412.5")]
    [InlineData("soak-log", "2031-03-13T18:00 21.0\r\n2031-03-13T19:00;21.2")]
    [InlineData("barrier-batch", "B-2031-007")]
    public void Fault_WhatCanBeRead_IsNull(string item, string text) => Assert.Null(PreparationJudge.Fault(Item(item), text));

    [Fact]
    public void Missing_NothingRecorded_NamesEveryRequiredItem() => Assert.Equal(
        Procedure.Preparation.Count(item => item.Required),
        PreparationJudge.Missing(Procedure.Preparation.Select(item => PreparationJudge.Judge(item, null))).Count);

    private static PreparationItem Item(string key) => Procedure.Preparation.Single(item => item.Item == key);
}
