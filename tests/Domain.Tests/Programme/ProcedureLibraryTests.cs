using System.Text;
using System.Text.Json;
using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Programme;

/// <summary>The figures of methods edition 1, "Conduct" and "Structure", and design §4, against the data file.</summary>
public sealed class ProcedureLibraryTests
{
    private static readonly ProcedureEdition Procedure = ProcedureLibrary.Find("offset-frontal-64")!;

    [Theory]
    [InlineData("impactSpeed", "64.4", "63.4", "65.4", true)]
    [InlineData("speedAgreement", null, null, "0.5", false)]
    [InlineData("overlap", "40", "39", "41", true)]
    [InlineData("dummyTemperature", null, "20.6", "22.2", true)]
    [InlineData("testMass", null, null, null, false)]
    [InlineData("impactAngle", "0", "-2", "2", false)]
    [InlineData("verticalAlignment", "0", "-25", "25", false)]
    public void Conduct_OfOffsetFrontal_HasBoundsOfMethods(string item, string? nominal, string? lower, string? upper, bool required)
    {
        var found = Assert.Single(Procedure.Conduct, c => c.Item == item);

        Assert.Equal((Number(nominal), Number(lower), Number(upper), required), (found.Nominal, found.Lower, found.Upper, found.Required));
        Assert.False(string.IsNullOrWhiteSpace(found.Source));
    }

    [Fact]
    public void Find_OffsetFrontal_IsEditionOneWithItsFigures()
    {
        Assert.Equal(1, Procedure.Edition);
        Assert.Equal(64.4m, Procedure.NominalSpeedKmh);
        Assert.Equal(120, Procedure.SmallerOccupantForwardShiftMm);
        Assert.True(Procedure.BothTibiaCells);
        Assert.Equal(25, Procedure.Points.Count);
        Assert.Equal(9, Procedure.Points.Count(p => p.StartsWith("footwell-", StringComparison.Ordinal)));
        Assert.Same(Procedure, ProcedureLibrary.Find("offset-frontal-64", 1));
        Assert.Null(ProcedureLibrary.Find("offset-frontal-64", 2));
        Assert.Null(ProcedureLibrary.Find("side-impact"));
    }

    /// <summary>SAE J211 signs of a frontal crash (standards.md §1.5): compression, and deceleration of vehicle and dummy, read negative; belts positive.</summary>
    [Theory]
    [InlineData("VEHC0000", "ACX", -1)]
    [InlineData("CHST0003", "DSX", -1)]
    [InlineData("FEMRLE00", "FOZ", -1)]
    [InlineData("KNSLRI00", "DSX", -1)]
    [InlineData("TIBILEUP", "FOZ", -1)]
    [InlineData("SEBE????", "FO0", 1)]
    public void Channels_OfOffsetFrontal_ExpectFrontalSigns(string location, string component, int sign) =>
        Assert.Equal(sign, Assert.Single(Procedure.Channels, c => c.Location == location && c.Component == component).ExpectedPeak);

    [Fact]
    public void Channels_OfOffsetFrontal_HaveWellFormedNames() =>
        Assert.All(Procedure.Channels, c => Assert.Equal((8, 3), (c.Location.Length, c.Component.Length)));

    [Fact]
    public void Read_UnknownMember_IsRefused() =>
        Assert.Throws<JsonException>(() => ProcedureReader.Read(new MemoryStream(Encoding.UTF8.GetBytes("{\"keyy\":\"x\"}"))));

    private static decimal? Number(string? text) => text is null ? null : decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    [Theory]
    [InlineData("2030-12-31", 1)]
    [InlineData("2031-01-01", 2)]
    [InlineData("2032-06-01", 3)]
    [InlineData("2020-01-01", 1)]
    public void InForce_Day_GivesTheEditionRunsOfThatDayAreMadeUnder(string day, int edition)
    {
        ProcedureEdition[] editions =
        [
            Procedure with { Edition = 3, InForceFrom = new(2032, 6, 1) }, Procedure with { Edition = 1, InForceFrom = new(2030, 1, 1) },
            Procedure with { Edition = 2, InForceFrom = new(2031, 1, 1) },
        ];

        Assert.Equal(edition, ProcedureLibrary.InForce(editions, DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture))!.Edition);
    }
}
