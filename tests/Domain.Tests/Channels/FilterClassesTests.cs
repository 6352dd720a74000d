using Toepan.Domain.Channels;
using Xunit;

namespace Toepan.Domain.Tests.Channels;

/// <summary>Letters and header classes; methods edition 1, "Before anything" 4 and settled readings.</summary>
public sealed class FilterClassesTests
{
    [Theory]
    [InlineData('A', null, 1000)]
    [InlineData('B', null, 600)]
    [InlineData('C', "NOVALUE", 180)]
    [InlineData('D', "", 60)]
    [InlineData('P', null, null)]
    [InlineData('0', "0", null)]
    [InlineData('A', "180", 180)]
    [InlineData('C', "1000", 180)]
    [InlineData('0', "CFC 600", 600)]
    [InlineData('S', "1000", 1000)]
    [InlineData('S', null, null)]
    [InlineData('X', "CFC_60", 60)]
    [InlineData('X', "something", null)]
    [InlineData('P', "cfc1000 Hz", 1000)]
    [InlineData('A', "1000.0", 1000)]
    [InlineData('0', "b", 600)]
    public void Recorded_LetterAndHeader_IsTheLowerClass(char letter, string? header, int? expected) =>
        Assert.Equal(expected, FilterClasses.Recorded(letter, header));

    [Theory]
    [InlineData('A', "180", true)]
    [InlineData('A', "1000", false)]
    [InlineData('0', "1000", true)]
    [InlineData('S', "1000", false)]
    [InlineData('P', "NOVALUE", false)]
    public void Disagree_LetterAgainstHeader_OnlyWhereBothSaySomething(char letter, string header, bool expected) =>
        Assert.Equal(expected, FilterClasses.Disagree(letter, header));
}
