using System.Text.Json;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Packages;

/// <summary>programme.json, validated: identity, conduct and occupants of one run.</summary>
public sealed record ProgrammeDocument
{
    /// <summary>Test code, <c>[A-Z]{2,4}-[0-9]{3,6}</c>.</summary>
    public required string Test { get; init; }

    /// <summary>Procedure key, e.g. <c>offset-frontal-64</c>.</summary>
    public required string Procedure { get; init; }

    public required DateOnly Date { get; init; }

    public string? Laboratory { get; init; }

    /// <summary>Test code of the run this one repeats, or null.</summary>
    public string? RepeatOf { get; init; }

    public required PackageVehicle Vehicle { get; init; }

    public required ConductReadings Conduct { get; init; }

    public required IReadOnlyList<Occupant> Occupants { get; init; }

    public required StructureFrame Structure { get; init; }

    /// <summary>Members this version does not know, kept as they are, by JSON path.</summary>
    public IReadOnlyDictionary<string, JsonElement> Unknown { get; init; } = new Dictionary<string, JsonElement>();
}

/// <summary>The vehicle as a package describes it.</summary>
public sealed record PackageVehicle(string Key, string? Make, string? Model, int? ModelYearFrom, int? ModelYearTo, string Class, decimal? KerbMassKg);

/// <summary>Unit and axis directions of the static measurements.</summary>
/// <param name="Unit">mm, cm or m.</param>
/// <param name="X">Where x points: forward, rearward, left, right, up or down.</param>
/// <param name="Y">Where y points.</param>
/// <param name="Z">Where z points.</param>
public sealed record StructureFrame(string Unit, string X, string Y, string Z)
{
    /// <summary>What holds where programme.json says nothing: mm; x forward, y right, z down.</summary>
    public static StructureFrame Default { get; } = new("mm", "forward", "right", "down");
}
