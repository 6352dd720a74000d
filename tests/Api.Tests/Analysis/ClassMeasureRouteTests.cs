using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using Toepan.Api.Security;
using Toepan.Api.Tests.Packages;
using Toepan.Support;

namespace Toepan.Api.Tests.Analysis;

public sealed class ClassMeasureRouteTests(PostgresFixture postgres)
{
    private const string Vans = "/api/v1/classes/delivery-van/measures";

    [Fact]
    public async Task Get_TwoRuns_GivesMeanAndDeviationOfTheirValues()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api, 2, 3, 5);

        var table = (await lab.Read($"{Vans}?measure=head.hic15")).Json;

        var values = table.GetProperty("rows").EnumerateArray().Select(row => row.GetProperty("values")[0].GetDouble()).ToList();
        var statistics = table.GetProperty("statistics")[0];
        Assert.Equal(2, values.Count);
        Assert.Equal(2, statistics.GetProperty("count").GetInt32());
        // Closed form for two values: mean (a + b)/2, sd |a − b|/√2, quartiles a quarter of the way (type 7).
        Assert.Equal((values[0] + values[1]) / 2, statistics.GetProperty("mean").GetDouble(), 1e-9);
        Assert.Equal(Math.Abs(values[0] - values[1]) / Math.Sqrt(2), statistics.GetProperty("sd").GetDouble(), 1e-9);
        Assert.Equal(values.Min() + (Math.Abs(values[0] - values[1]) / 4), statistics.GetProperty("lowerQuartile").GetDouble(), 1e-9);
    }

    [Theory]
    [InlineData("", "FO-0001/1")]
    [InlineData("&seat=driver", "FO-0001/1")]
    [InlineData("&seat=passenger", "FO-0001/3")]
    [InlineData("&seat=all", "FO-0001/1 FO-0001/3")]
    [InlineData("&seat=all&procedure=another", "")]
    [InlineData("&runs=all", "FO-0001/1 FO-0005/1")]
    public async Task Get_SeatAndRuns_ChooseTheRows(string query, string expected)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api, 1, 5);

        var table = (await lab.Read($"{Vans}?measure=chest.deflection{query}")).Json;

        Assert.Equal(expected, string.Join(' ', table.GetProperty("rows").EnumerateArray().Select(row => $"{row.GetProperty("test")}/{row.GetProperty("position")}")));
    }

    [Fact]
    public async Task Get_VehicleMeasureForAllSeats_CountsOnceARun()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api, 1);

        var table = (await lab.Read($"{Vans}?measure=vehicle.deltav&seat=all")).Json;

        Assert.Equal(2, table.GetProperty("rows").GetArrayLength());
        Assert.Equal(1, table.GetProperty("statistics")[0].GetProperty("count").GetInt32());
    }

    [Fact]
    public async Task Get_Csv_HoldsARowARunAndAColumnAMeasure()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api, 2);
        lab.DefaultRequestHeaders.Accept.Add(new MediaTypeWithQualityHeaderValue("text/csv"));

        var csv = await lab.Read($"{Vans}?measure=head.hic15&measure=vehicle.deltav");

        var lines = csv.Json.GetString()!.TrimEnd('\n').Split('\n');
        Assert.Equal("vehicle,make,model,test,valid,position,seat,head.hic15,vehicle.deltav", lines[0]);
        Assert.StartsWith("velsey-porter-2030,Velsey,Porter,FO-0002,true,1,driver,", lines[1], StringComparison.Ordinal);
        Assert.True(double.Parse(lines[1].Split(',')[7], CultureInfo.InvariantCulture) > 0);
    }

    [Theory]
    [InlineData("?seat=roof")]
    [InlineData("?runs=some")]
    [InlineData("?measure=no.such")]
    public async Task Get_BadQuery_IsABadRequest(string query)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api, 2);

        Assert.Equal(HttpStatusCode.BadRequest, (await lab.Read(Vans + query)).Status);
    }

    private static async Task<HttpClient> Lab(ApiHost api, params int[] runs)
    {
        var lab = await api.Machine(Role.Engineer);
        foreach (var number in runs)
        {
            Assert.Equal(HttpStatusCode.Created, (await lab.Upload(TestPackages.Zip(number))).Status);
        }

        return lab;
    }
}
