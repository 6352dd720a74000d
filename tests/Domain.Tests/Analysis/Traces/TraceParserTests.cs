using Toepan.Domain.Analysis.Traces;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Traces;

public sealed class TraceParserTests
{
    [Theory]
    [InlineData("FO-0042/11HEAD0000H3ACXP@180", "FO-0042/11HEAD0000H3ACXP@180")]
    [InlineData(" fo-0042 / 11head0000h3acxp @raw ", "FO-0042/11HEAD0000H3ACXP")]
    [InlineData("res(FO-1/A@1000, FO-1/B@1000,FO-1/C@1000)", "res(FO-1/A@1000,FO-1/B@1000,FO-1/C@1000)")]
    [InlineData("int(int(FO-1/A@180,-17.9))~-2.50", "int(int(FO-1/A@180,-17.9))~-2.5")]
    [InlineData("DIFF(FO-1/A,FO-2/A)", "diff(FO-1/A,FO-2/A)")]
    [InlineData("scale(FO-1/A,1e-3)", "scale(FO-1/A,0.001)")]
    public void Read_WellFormed_IsWrittenInOneForm(string text, string written)
    {
        var reading = TraceParser.Read(text);

        Assert.Null(reading.Error);
        Assert.Equal(written, reading.Trace!.ToString());
        Assert.Equal(written, TraceParser.Read(written).Trace!.ToString());
    }

    [Theory]
    [InlineData("", "character 1 stands the end")]
    [InlineData("FO-0042", "TEST/CODE")]
    [InlineData("FO-0042/", "a channel code")]
    [InlineData("FO-0042/A@77", "60, 180, 600, 1000 or raw")]
    [InlineData("FO-0042/A@", "a class")]
    [InlineData("FO-0042/A x", "expected the end")]
    [InlineData("root(FO-1/A)", "res, int, diff")]
    [InlineData("res(FO-1/A)", "2 to 6 traces in res(…), not 1")]
    [InlineData("diff(FO-1/A,FO-1/B,FO-1/C)", "2 traces in diff(…), not 3")]
    [InlineData("scale(FO-1/A)", "a number after the trace")]
    [InlineData("res(FO-1/A,FO-1/B", "',' or ')'")]
    [InlineData("res(FO-1/A,3)", "TEST/CODE")]
    [InlineData("FO-1/A~", "a shift in ms")]
    [InlineData("FO-1/A~99999", "at most 10000 ms")]
    [InlineData("FO-1/A~NaN", "a shift in ms")]
    [InlineData("neg(neg(neg(neg(neg(neg(FO-1/A))))))", "at most 5 functions")]
    [InlineData("<script>", "'<'")]
    public void Read_Malformed_SaysWhereAndWhatWasExpected(string text, string expected)
    {
        var reading = TraceParser.Read(text);

        Assert.Null(reading.Trace);
        Assert.Contains(expected, reading.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_TooLong_IsRefusedByItsLength() =>
        Assert.Contains("1001 characters", TraceParser.Read(new string('A', 1001)).Error, StringComparison.Ordinal);
}
