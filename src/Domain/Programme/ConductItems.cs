namespace Toepan.Domain.Programme;

/// <summary>Keys of the conduct items this code knows how to judge.</summary>
public static class ConductItems
{
    public const string ImpactSpeed = "impactSpeed";
    public const string SpeedAgreement = "speedAgreement";
    public const string Overlap = "overlap";
    public const string DummyTemperature = "dummyTemperature";
    public const string TestMass = "testMass";
    public const string ImpactAngle = "impactAngle";
    public const string VerticalAlignment = "verticalAlignment";
}
