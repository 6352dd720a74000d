using System.Globalization;
using System.Net;
using Toepan.Api.Tests.Packages;

namespace Toepan.Api.Tests.Analysis;

[Collection(ProgrammeReaders.Name)]
public sealed class ClassMeasureRouteTests(SharedProgramme programme)
{
    private const string Vans = "/api/v1/classes/delivery-van/measures";
    private static readonly string[] Quartiles = ["lowerQuartile", "median", "upperQuartile"];

    [Fact]
    public async Task Get_FiveValidRuns_GivesMeanDeviationAndQuartilesOfTheirValues()
    {
        var table = (await programme.Lab.Read($"{Vans}?measure=head.hic15")).Json;

        var values = table.GetProperty("rows").EnumerateArray().Select(row => row.GetProperty("values")[0].GetDouble()).Order().ToList();
        var statistics = table.GetProperty("statistics")[0];
        var mean = values.Sum() / 5;
        Assert.Equal(5, values.Count);
        Assert.Equal(5, statistics.GetProperty("count").GetInt32());
        Assert.Equal(mean, statistics.GetProperty("mean").GetDouble(), 1e-9);
        Assert.Equal(Math.Sqrt(values.Sum(value => Math.Pow(value - mean, 2)) / 4), statistics.GetProperty("sd").GetDouble(), 1e-9);
        // Type 7 with n = 5: h = 4p, so the quartiles are the second, third and fourth value.
        Assert.Equal(values[1..4], Quartiles.Select(name => statistics.GetProperty(name).GetDouble()));
    }

    [Theory]
    [InlineData("", "FO-0001/1 FO-0002/1 FO-0003/1 FO-0006/1 FO-0008/1")]
    [InlineData("&seat=driver", "FO-0001/1 FO-0002/1 FO-0003/1 FO-0006/1 FO-0008/1")]
    [InlineData("&seat=passenger", "FO-0001/3")]
    [InlineData("&seat=all", "FO-0001/1 FO-0001/3 FO-0002/1 FO-0003/1 FO-0006/1 FO-0008/1")]
    [InlineData("&seat=all&procedure=another", "")]
    [InlineData("&runs=all", "FO-0001/1 FO-0002/1 FO-0003/1 FO-0005/1 FO-0006/1 FO-0008/1")]
    public async Task Get_SeatAndRuns_ChooseTheRows(string query, string expected)
    {
        var lab = programme.Lab;

        var table = (await lab.Read($"{Vans}?measure=chest.deflection{query}")).Json;

        Assert.Equal(expected, string.Join(' ', table.GetProperty("rows").EnumerateArray().Select(row => $"{row.GetProperty("test")}/{row.GetProperty("position")}")));
    }

    [Fact]
    public async Task Get_VehicleMeasureForAllSeats_CountsOnceARun()
    {
        var lab = programme.Lab;

        var table = (await lab.Read($"{Vans}?measure=vehicle.deltav&seat=all")).Json;

        Assert.Equal(6, table.GetProperty("rows").GetArrayLength());
        Assert.Equal(5, table.GetProperty("statistics")[0].GetProperty("count").GetInt32());
    }

    [Fact]
    public async Task Get_Csv_HoldsARowARunAndAColumnAMeasure()
    {
        using var lab = await programme.Accepting("text/csv");

        var csv = await lab.Read($"{Vans}?measure=head.hic15&measure=vehicle.deltav");

        var lines = csv.Json.GetString()!.TrimEnd().Split("\r\n");
        Assert.Equal("vehicle,make,model,test,kind,valid,position,seat,dummy,modelYear,testMassKg,procedure,date,overall,methodEdition,head.hic15,vehicle.deltav,about", lines[0]);
        Assert.StartsWith("velsey-porter-2030,Velsey,Porter,FO-0002,run,true,1,driver,H3,2029,", lines[2], StringComparison.Ordinal);
        Assert.True(double.Parse(lines[2].Split(',')[15], CultureInfo.InvariantCulture) > 0);
    }

    [Theory]
    [InlineData("?seat=roof")]
    [InlineData("?runs=some")]
    [InlineData("?measure=no.such")]
    public async Task Get_BadQuery_IsABadRequest(string query)
    {
        var lab = programme.Lab;

        Assert.Equal(HttpStatusCode.BadRequest, (await lab.Read(Vans + query)).Status);
    }
}
