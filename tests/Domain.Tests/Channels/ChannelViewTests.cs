using Toepan.Domain.Channels;
using Xunit;
using static Toepan.Domain.Tests.Channels.TestPackages;

namespace Toepan.Domain.Tests.Channels;

public sealed class ChannelViewTests
{
    [Fact]
    public void Of_Filtered_IsInTheWorkingUnitOverTheWholeRecord()
    {
        // Closed form: a 10 Hz half sine passes class 60 (100 Hz corner) almost unchanged; 60 g at 50 ms.
        var channel = Channel("11HEAD0000H3ACXP", "m/(s*s)", t => 9.80665 * (t is > 0 and < 0.1 ? -60 * Math.Sin(Math.PI * t / 0.1) : 0));

        var view = ChannelView.Of(ChannelPreparer.Prepare(channel, [], null), 60);

        Assert.Equal(("g", 60, 3601), (view.Unit, view.FilterClass, view.History!.Count));
        var values = view.History.Values.ToArray();
        Assert.Equal(0.05, view.History.TimeAt(Array.IndexOf(values, values.Min())), 1e-3);
        Assert.Equal(-60, values.Min(), 0.5);
    }

    [Fact]
    public void Of_UnfitChannel_IsShownAsRecordedOnly()
    {
        var prepared = ChannelPreparer.Prepare(Channel("11HEAD0000H3ACXA", "furlong", _ => 7), [], null);

        var raw = ChannelView.Of(prepared, null);

        Assert.Equal(("furlong", 1000, 3601), (raw.Unit, raw.FilterClass, raw.History!.Count));
        Assert.Contains("unknown unit", ChannelView.Of(prepared, 60).Absent, StringComparison.Ordinal);
    }
}
