using Toepan.Domain.Measures;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Toepan.Domain.Sheets;

namespace Toepan.Domain.Tests.Sheets;

/// <summary>Facts of an invented vehicle.</summary>
internal static class SheetCases
{
    public static Measure Vehicle(string code, double mm) => new() { Code = code, Unit = "mm", Value = mm };

    public static RegionRating Region(string region, ProtectionLevel level, double risk) =>
        new(region, 1, level, null, null, null, null, null, risk, risk, level, []);

    public static Rating Rated(params RegionRating[] regions) => new()
    {
        Scheme = "offset-frontal-1",
        Valid = true,
        Overall = ProtectionLevel.Low,
        NotRated = null,
        Position = 1,
        Regions = [.. regions, .. new[] { "head", "neck", "chest", "thigh.left", "lowerleg.left" }
            .Where(name => !regions.Any(region => region.Region == name)).Select(name => Region(name, ProtectionLevel.High, 0.01))],
        Structure = new("structure", null, ProtectionLevel.High, null, null, null, null, null, null, null, null, []),
        LifeExcess = 0.2,
        LegsExcess = 0.1,
        Rules = [],
        Explanation = [],
    };

    public static SheetFacts Facts() => new()
    {
        Vehicle = new()
        {
            Key = "tarnbrook-voyle", Make = "Tarnbrook", Model = "Voyle", Name = "Tarnbrook Voyle", ClassKey = "delivery-van", ClassTitle = "Light delivery vans",
            ModelYearFrom = 2030, ModelYearTo = 2032, BuiltFrom = null, BuiltTo = null, MassKg = 1690, Twins = [],
        },
        Runs = [],
        Test = "FO-0042",
        Method = new()
        {
            Date = new DateOnly(2031, 3, 14), Laboratory = null, Procedure = "offset-frontal-64", Scheme = "offset-frontal-1", SchemeTitle = "Offset frontal, edition 1",
            MethodEdition = "1", PackageSha256 = new string('0', 64), ReductionId = 1, RatingId = 1, Dummy = "H3", Position = 1,
        },
        Rating = Rated(),
        Measures = [],
        Structure = new(null, [], [], null),
        Findings = [],
        Conduct = new ConductJudgement([]),
        Holds = new(0.84, 0.78),
        Ranges = [],
    };
}
