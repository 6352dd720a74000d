using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Programme;

public sealed class VehicleRulesTests
{
    private static readonly VehicleFacts Sound = new()
    {
        Class = "delivery-van", Make = "Tarnbrook", Model = "Voyle", BuiltFrom = new(2030, 4, 1), BuiltTo = new(2032, 3, 31), KerbMassKg = 1690, SalesSharePercent = 12.5m,
    };

    public static TheoryData<VehicleFacts, string> Faulty => new()
    {
        { Sound with { BuiltTo = new(2030, 3, 31) }, "build dates" },
        { Sound with { ModelYearFrom = 2032, ModelYearTo = 2030 }, "model years" },
        { Sound with { KerbMassKg = 16 }, "kerb mass" },
        { Sound with { SalesSharePercent = 100.1m }, "sales share" },
        { Sound with { ModelYearFrom = 31 }, "modelYearFrom" },
        { Sound with { Make = new string('x', 101) }, "make" },
        { Sound with { Model = "Voy\u0000le" }, "control" },
    };

    [Fact]
    public void Faults_SoundFacts_AreNone() => Assert.Empty(VehicleRules.Faults(Sound));

    [Theory]
    [MemberData(nameof(Faulty))]
    public void Faults_OneFault_IsTheOnlyOneSaid(VehicleFacts facts, string says) =>
        Assert.Contains(says, Assert.Single(VehicleRules.Faults(facts)), StringComparison.Ordinal);
}
