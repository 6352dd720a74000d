using System.Net;
using System.Text.Json;
using MiniExcelLibs;
using Parquet;
using Toepan.Api.Tests.Packages;

namespace Toepan.Api.Tests.Analysis;

/// <summary>Tables taken out say what the JSON says. Spreadsheets are read by MiniExcel, Parquet by Parquet.Net's reader.</summary>
[Collection(ProgrammeReaders.Name)]
public sealed class ExportTests(SharedProgramme programme)
{
    private const string Vans = "/api/v1/classes/delivery-van/measures?measure=head.hic15&measure=vehicle.deltav&runs=all";

    [Fact]
    public async Task ClassMeasures_Parquet_HoldsTheValuesAndWhatTheyAre()
    {
        var json = (await programme.Lab.Read(Vans)).Json;
        var expected = json.GetProperty("rows").EnumerateArray().Select(row => (row.GetProperty("test").GetString()!, row.GetProperty("values")[0].GetDouble())).ToList();

        await using var reader = await Open($"{Vans}&format=parquet");
        using var group = reader.OpenRowGroupReader(0);
        var tests = await Texts(reader, group, "test");
        var values = await Numbers(reader, group, "head.hic15");

        Assert.Equal(expected, tests.Zip(values, (test, value) => (test, value!.Value)));
        Assert.Equal(("1", "/api/v1/classes/delivery-van/measures?measure=head.hic15&measure=vehicle.deltav&runs=all&format=parquet"), (reader.CustomMetadata["methodEditions"], reader.CustomMetadata["query"]));
        Assert.Contains("vehicle.deltav km/h", reader.CustomMetadata["units"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task ClassMeasures_Spreadsheet_HoldsDataAndAbout()
    {
        var json = (await programme.Lab.Read(Vans)).Json;
        var bytes = await programme.Lab.GetByteArrayAsync($"{Vans}&format=xlsx", TestContext.Current.CancellationToken);

        var rows = new MemoryStream(bytes).Query(useHeaderRow: true, sheetName: "data").Cast<IDictionary<string, object>>().ToList();
        var about = new MemoryStream(bytes).Query(useHeaderRow: true, sheetName: "about").Cast<IDictionary<string, object>>().ToDictionary(row => (string)row["name"], row => row["value"].ToString());

        Assert.Equal(json.GetProperty("rows").GetArrayLength(), rows.Count);
        Assert.Equal(json.GetProperty("rows")[0].GetProperty("values")[0].GetDouble(), Convert.ToDouble(rows[0]["head.hic15"], System.Globalization.CultureInfo.InvariantCulture), 1e-9);
        Assert.Equal("km/h", about["unit of vehicle.deltav"]);
    }

    [Fact]
    public async Task ClassMeasures_Csv_SaysInItsFirstRowWhatItIs()
    {
        var text = await programme.Lab.GetStringAsync($"{Vans}&format=csv", TestContext.Current.CancellationToken);
        var lines = text.TrimEnd().Split("\r\n");
        var about = JsonDocument.Parse(lines[1][(lines[1].IndexOf("\"{", StringComparison.Ordinal) + 1)..^1].Replace("\"\"", "\"", StringComparison.Ordinal)).RootElement;

        Assert.Equal("1", about.GetProperty("methodEditions").GetString());
        Assert.EndsWith(",", lines[2], StringComparison.Ordinal);
        Assert.Equal(7, lines.Length);
    }

    [Fact]
    public async Task Channels_OfAClass_AreARowGroupEachAndEqualTheSingleOnes()
    {
        const string Code = "11HEAD0000H3ACXP";
        var index = (await programme.Lab.Read("/api/v1/tests/FO-0002/channels")).Json.EnumerateArray().Select(one => one.GetProperty("code").GetString()!).ToList();
        var code = index.Contains(Code) ? Code : index[0];
        var single = (await programme.Lab.Read($"/api/v1/tests/FO-0002/channels/{code}?cfc=180")).Json.GetProperty("values").EnumerateArray().Select(value => value.GetDouble()).ToList();

        await using var reader = await Open($"/api/v1/classes/delivery-van/channels?channel={code}&cfc=180");
        var found = new Dictionary<string, List<double?>>();
        for (var i = 0; i < reader.RowGroupCount; i++)
        {
            using var group = reader.OpenRowGroupReader(i);
            var tests = await Texts(reader, group, "test");
            Assert.Single(tests.Distinct());
            found.Add(tests[0], await Numbers(reader, group, "value"));
        }

        Assert.Equal(6, found.Count);
        Assert.Equal(single, found["FO-0002"].Select(value => value!.Value));
    }

    [Fact]
    public async Task Channel_Parquet_EqualsTheJson()
    {
        var code = (await programme.Lab.Read("/api/v1/tests/FO-0002/channels")).Json[0].GetProperty("code").GetString()!;
        var single = (await programme.Lab.Read($"/api/v1/tests/FO-0002/channels/{code}")).Json.GetProperty("values").EnumerateArray().Select(value => value.GetDouble()).ToList();

        using var lab = await programme.Accepting("application/vnd.apache.parquet");
        await using var reader = await ParquetReader.CreateAsync(new MemoryStream(await lab.GetByteArrayAsync($"/api/v1/tests/FO-0002/channels/{code}", TestContext.Current.CancellationToken)), cancellationToken: TestContext.Current.CancellationToken);
        using var group = reader.OpenRowGroupReader(0);

        Assert.Equal(single, (await Numbers(reader, group, code)).Select(value => value!.Value));
    }

    [Theory]
    [InlineData("/api/v1/tests/FO-0002/structure?format=csv", "text/csv")]
    [InlineData("/api/v1/tests/FO-0002/findings?all=true&format=parquet", "application/vnd.apache.parquet")]
    [InlineData("/api/v1/repeats?tests=FO-0005,FO-0006&format=csv", "text/csv")]
    [InlineData("/api/v1/repeats?tests=FO-0005,FO-0006&format=parquet", "application/vnd.apache.parquet")]
    [InlineData("/api/v1/disagreements?format=xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet")]
    [InlineData("/api/v1/tests/FO-0002/measures?format=csv", "text/csv")]
    [InlineData("/api/v1/tests/FO-0002/measures?format=parquet", "application/vnd.apache.parquet")]
    [InlineData("/api/v1/explore?x=head.hic15&y=chest.deflection&format=xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet")]
    [InlineData("/api/v1/explore?x=head.hic15&y=head.hic15&format=parquet", "application/vnd.apache.parquet")]
    public async Task Table_InEveryForm_IsAFile(string address, string type)
    {
        using var answer = await programme.Lab.GetAsync(address, TestContext.Current.CancellationToken);

        Assert.Equal((HttpStatusCode.OK, type), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        Assert.True((await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Length > 300);
    }

    private async Task<ParquetReader> Open(string address) =>
        await ParquetReader.CreateAsync(new MemoryStream(await programme.Lab.GetByteArrayAsync(address, TestContext.Current.CancellationToken)), cancellationToken: TestContext.Current.CancellationToken);

    private static async Task<List<string>> Texts(ParquetReader reader, ParquetRowGroupReader group, string column)
    {
        var texts = new string?[group.RowCount];
        await group.ReadAsync(reader.Schema.DataFields.Single(field => field.Name == column), texts.AsMemory(), null, TestContext.Current.CancellationToken);
        return [.. texts.Select(text => text!)];
    }

    private static async Task<List<double?>> Numbers(ParquetReader reader, ParquetRowGroupReader group, string column)
    {
        var numbers = new double?[group.RowCount];
        await group.ReadAsync<double>(reader.Schema.DataFields.Single(field => field.Name == column), numbers.AsMemory(), null, TestContext.Current.CancellationToken);
        return [.. numbers];
    }
}
