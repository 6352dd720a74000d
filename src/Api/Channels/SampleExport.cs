using Toepan.Api.Export;
using Toepan.Domain.Measures;

namespace Toepan.Api.Channels;

/// <summary>Samples of a channel → a table to be taken out: time and value.</summary>
internal static class SampleExport
{
    public static ExportTable Of(string test, ChannelSamples samples, string query)
    {
        var times = SampleTimes.Of(samples);
        return new ExportTable(
            $"{test}-{samples.Code}", [ExportColumn.Number("time", "s"), ExportColumn.Number(samples.Code, samples.Unit)],
            samples.Values.Select((value, at) => new object?[] { times[at], value }), query, [MethodEdition.Current]);
    }
}
