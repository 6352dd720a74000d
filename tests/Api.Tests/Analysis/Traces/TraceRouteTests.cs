using System.Globalization;
using System.Net;
using System.Runtime.InteropServices;
using System.Text.Json;
using Toepan.Api.Tests.Packages;

namespace Toepan.Api.Tests.Analysis.Traces;

/// <summary>Traces by the contract, against the samples that the channel route gives of the same run.</summary>
[Collection(ProgrammeReaders.Name)]
public sealed class TraceRouteTests(SharedProgramme programme)
{
    private const string Head = "FO-0002/11HEAD0000H3ACXP@1000";
    private const string Resultant = "res(FO-0002/11HEAD0000H3ACXP@1000,FO-0002/11HEAD0000H3ACYP@1000,FO-0002/11HEAD0000H3ACZP@1000)";

    [Fact]
    public async Task Traces_Bytes_HoldTheExtremesOfEveryColumnOfTheFullSignal()
    {
        var full = await FullSignal();

        var (header, values) = await Bytes($"t={Head}&from=0.0123&to=0.1987&columns=150");

        var trace = header.GetProperty("traces")[0];
        Assert.True(trace.GetProperty("reduced").GetBoolean());
        Assert.Equal(300, values.Length);
        for (var column = 0; column < 150; column++)
        {
            var (from, to) = (0.0123 + (0.1864 * column / 150), 0.0123 + (0.1864 * (column + 1) / 150));
            var inside = full.Where(sample => sample.Time >= from - 1e-10 && (sample.Time < to - 1e-10 || (column == 149 && sample.Time <= to + 1e-10))).Select(sample => (float)sample.Value).ToList();
            float[] pair = [values[2 * column], values[(2 * column) + 1]];
            Assert.Equal((inside.Min(), inside.Max()), (pair.Min(), pair.Max()));
        }
    }

    [Fact]
    public async Task Traces_ZoomedIn_HoldEverySample()
    {
        var full = await FullSignal();

        var (header, values) = await Bytes($"t={Head}&from=0.05&to=0.06&columns=800");

        var first = header.GetProperty("traces")[0].GetProperty("first").GetDouble();
        Assert.Equal(full.Where(sample => sample.Time > 0.04985 && sample.Time < 0.06015).Select(sample => (float)sample.Value), values);
        Assert.Equal(0.0499, first, 1e-9);
    }

    [Fact]
    public async Task Traces_HeadResultant_CarriesItsWindowsAndLimit()
    {
        var (header, _) = await Bytes($"t={Uri.EscapeDataString(Resultant)}");
        var measures = (await programme.Lab.Read("/api/v1/tests/FO-0002/measures")).Json.EnumerateArray().ToList();
        var hic = measures.Single(measure => measure.GetProperty("code").GetString() == "head.hic15" && measure.GetProperty("position").GetInt32() == 1);

        var trace = header.GetProperty("traces")[0];
        var mark = trace.GetProperty("marks").EnumerateArray().Single(mark => mark.GetProperty("code").GetString() == "head.hic15");
        Assert.Equal(hic.GetProperty("from").GetDouble(), mark.GetProperty("fromS").GetDouble(), 1e-12);
        Assert.Equal(hic.GetProperty("to").GetDouble(), mark.GetProperty("toS").GetDouble(), 1e-12);
        Assert.Equal("80", trace.GetProperty("limits").EnumerateArray().Single().GetProperty("value").ToString());
    }

    [Fact]
    public async Task Traces_Force_MarksItsPeakOnceAndItsLimitBelowZero()
    {
        var (header, _) = await Bytes("t=FO-0002/11FEMRLE00H3FOZP@600");

        var trace = header.GetProperty("traces")[0];
        var mark = trace.GetProperty("marks").EnumerateArray().Single();
        Assert.Equal("femur.left.compression", mark.GetProperty("code").GetString());
        Assert.Equal(-mark.GetProperty("value").GetDouble(), mark.GetProperty("ordinate").GetDouble(), 1e-9);
        Assert.Equal(-10.008, trace.GetProperty("limits").EnumerateArray().Single().GetProperty("value").GetDouble()); // 49 CFR 571.208 S6.5
    }

    [Fact]
    public async Task Traces_FilteredOtherwise_DrawNoLimit()
    {
        var (header, _) = await Bytes($"t={Uri.EscapeDataString(Resultant.Replace("@1000", "@180", StringComparison.Ordinal))}");

        Assert.Empty(header.GetProperty("traces")[0].GetProperty("limits").EnumerateArray());
    }

    [Fact]
    public async Task Traces_Shifted_AreTheSameSamplesLater()
    {
        var (_, plain) = await Bytes($"t={Head}&from=0.05&to=0.06");
        var (header, shifted) = await Bytes($"t={Head}~2&from=0.052&to=0.062");

        Assert.Equal(plain, shifted);
        Assert.Equal(0.0519, header.GetProperty("traces")[0].GetProperty("first").GetDouble(), 1e-9);
    }

    [Fact]
    public async Task Traces_UnfitOrMissingChannel_IsAbsentWithTheReason()
    {
        var (header, _) = await Bytes($"t=FO-0008/11FEMRRI00H3FOZP@600&t=FO-0008/11NOSUCH&t=FO-0008/11FEMRRI00H3FOZP&from=0&to=0.1");

        var traces = header.GetProperty("traces");
        Assert.Contains("flat", traces[0].GetProperty("absent").GetString(), StringComparison.Ordinal);
        Assert.Contains("no channel 11NOSUCH", traces[1].GetProperty("absent").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, traces[2].GetProperty("absent").ValueKind);
    }

    [Fact]
    public async Task Traces_Csv_HoldsEverySampleOfTheWindow()
    {
        var full = await FullSignal();

        var text = (await programme.Lab.GetStringAsync(new Uri($"/api/v1/traces?t={Head}&t={Head}~0.05&from=0&to=0.01&format=csv", UriKind.Relative), TestContext.Current.CancellationToken)).TrimEnd('\n').Split('\n');

        Assert.Equal($"time of 1 [s],{Head} [g],time of 2 [s],{Head}~0.05 [g]", text[0]);
        var rows = text.Skip(1).Select(line => line.Split(',')).ToList();
        Assert.Equal(101, rows.Count);
        Assert.Equal(
            full.Where(sample => sample.Time is > -5e-5 and < 0.01005).Select(sample => sample.Value),
            rows.Select(row => double.Parse(row[1], CultureInfo.InvariantCulture)));
        Assert.Equal(5e-5, double.Parse(rows[0][2], CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task Values_AtInstants_AreTheNearestSamplesInFull()
    {
        var full = await FullSignal();

        var answer = await programme.Lab.Read($"/api/v1/traces/values?t={Head}&at=0.05004&at=9");

        var values = answer.Json[0];
        Assert.Equal(0.05, values.GetProperty("times")[0].GetDouble());
        Assert.Equal(full.Single(sample => Math.Abs(sample.Time - 0.05) < 1e-9).Value, values.GetProperty("values")[0].GetDouble());
        Assert.Equal(JsonValueKind.Null, values.GetProperty("values")[1].ValueKind);
    }

    [Theory]
    [InlineData("t=FO-0002/11HEAD0000H3ACXP@77", HttpStatusCode.BadRequest, "60, 180, 600, 1000 or raw")]
    [InlineData("from=0", HttpStatusCode.BadRequest, "0 traces")]
    [InlineData("t=FO-0002/X&columns=5", HttpStatusCode.BadRequest, "10 to 4000")]
    [InlineData("t=FO-0002/X&from=0.2&to=0.2", HttpStatusCode.BadRequest, "from is 0.2 s")]
    [InlineData("t=FO-9999/11HEAD0000H3ACXP", HttpStatusCode.NotFound, "FO-9999")]
    public async Task Traces_BadQuery_SaysWhatIsWrong(string query, HttpStatusCode status, string detail)
    {
        var answer = await programme.Lab.Read($"/api/v1/traces?{query}");

        Assert.Equal((status, "application/problem+json"), (answer.Status, answer.MediaType));
        Assert.Contains(detail, answer.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Traces_TwelveChannels_StayUnderTheirSize()
    {
        var codes = (await programme.Lab.Read("/api/v1/tests/FO-0002/channels")).Json.EnumerateArray().Select(channel => channel.GetProperty("code").GetString()!).Take(12);
        var query = string.Join('&', codes.Select(code => $"t=FO-0002/{code}"));

        var bytes = await programme.Lab.GetByteArrayAsync(new Uri($"/api/v1/traces?{query}&columns=1000", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.InRange(bytes.Length, 50_000, 120_000);
    }

    private async Task<List<(double Time, double Value)>> FullSignal()
    {
        var answer = await programme.Lab.Read("/api/v1/tests/FO-0002/channels/11HEAD0000H3ACXP?cfc=1000");
        var (start, interval) = (answer.Json.GetProperty("from").GetDouble(), answer.Json.GetProperty("interval").GetDouble());
        return [.. answer.Json.GetProperty("values").EnumerateArray().Select((value, i) => (start + (i * interval), value.GetDouble()))];
    }

    private async Task<(JsonElement Header, float[] Values)> Bytes(string query)
    {
        var bytes = await programme.Lab.GetByteArrayAsync(new Uri($"/api/v1/traces?{query}", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal("TPT1"u8.ToArray(), bytes[..4]);
        var length = BitConverter.ToInt32(bytes, 4);
        Assert.Equal(0, length % 4);
        return (JsonDocument.Parse(bytes.AsMemory(8, length)).RootElement, MemoryMarshal.Cast<byte, float>(bytes.AsSpan(8 + length)).ToArray());
    }
}
