using Toepan.Domain.Channels;
using Xunit;

namespace Toepan.Domain.Tests.Channels;

/// <summary>Code fields by place; example from standards.md §13 (from memory of ISO/TS 13499).</summary>
public sealed class ChannelCodeTests
{
    [Fact]
    public void TryParse_SixteenCharacters_CutsTheFields()
    {
        var code = ChannelCode.TryParse("11tibirilOH3MOYB ")!;

        Assert.Equal("11TIBIRILOH3MOYB", code.Text);
        Assert.Equal(('1', '1', "TIBI", "RI"), (code.TestObject, code.Position, code.MainLocation, code.FineLocation1));
        Assert.Equal(("LO", "H3", "MO"), (code.FineLocation2, code.Dummy, code.Dimension));
        Assert.Equal(('Y', 'B', "11TIBIRILOH3MOY"), (code.Direction, code.FilterLetter, code.Transducer));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("11HEAD0000H3ACX")]
    [InlineData("11HEAD0000H3ACXAA")]
    [InlineData("11HEAD0000H3 CXA")]
    [InlineData("11HEAD0000H3ÄCXA")]
    public void TryParse_AnythingElse_IsNull(string? text) => Assert.Null(ChannelCode.TryParse(text));
}
