namespace Toepan.Demo.Scenario;

/// <summary>An invented vehicle: what it is, and how well each part of it protects.</summary>
/// <param name="Key">Vehicle key.</param>
/// <param name="Make">Invented make.</param>
/// <param name="Model">Invented model.</param>
/// <param name="YearFrom">First model year.</param>
/// <param name="YearTo">Last model year.</param>
/// <param name="Class">Vehicle class key.</param>
/// <param name="KerbMassKg">Kerb mass, kg.</param>
/// <param name="Build">How it is built.</param>
public sealed record DemoVehicle(
    string Key, string Make, string Model, int YearFrom, int YearTo, string Class, int KerbMassKg, BuildQuality Build);

/// <summary>
/// How hard each part of the vehicle is on its occupant: 0 = as good as the class gets, 1 = ordinary, 2 = poor, 3 = bad.
/// The crash model turns these into stiffnesses, gaps and strengths.
/// </summary>
public sealed record BuildQuality(double Structure, double Head, double Neck, double Chest, double Thigh, double LowerLeg)
{
    /// <summary>The same figure for every part.</summary>
    public static BuildQuality Even(double figure) => new(figure, figure, figure, figure, figure, figure);
}
