namespace Toepan.Domain.Programme;

/// <summary>A class of vehicles that are planned, tested and compared together.</summary>
/// <param name="Key">Key as packages name it, e.g. <c>delivery-van</c>.</param>
/// <param name="Title">Plural title for screens.</param>
public sealed record VehicleClass(string Key, string Title);

/// <summary>The classes a new programme starts with.</summary>
public static class VehicleClasses
{
    public static IReadOnlyList<VehicleClass> Initial { get; } =
    [
        new("delivery-van", "Light delivery vans"),
        new("compact-electric", "Compact electric cars"),
        new("crew-cab-pickup", "Crew-cab pickups"),
    ];
}
