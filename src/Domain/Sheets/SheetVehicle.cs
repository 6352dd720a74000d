namespace Toepan.Domain.Sheets;

/// <summary>What the sheet is about, and which vehicles it applies to.</summary>
public sealed record SheetVehicle
{
    public required string Key { get; init; }
    public required string? Make { get; init; }
    public required string? Model { get; init; }

    /// <summary>Make and model.</summary>
    public required string Name { get; init; }
    public required string ClassKey { get; init; }

    /// <summary>Title of the class as the programme keeps it.</summary>
    public required string ClassTitle { get; init; }
    public required int? ModelYearFrom { get; init; }
    public required int? ModelYearTo { get; init; }
    public required DateOnly? BuiltFrom { get; init; }
    public required DateOnly? BuiltTo { get; init; }

    /// <summary>Kerb mass, kg; what "similar mass" is judged on. Null where not known.</summary>
    public required double? MassKg { get; init; }

    /// <summary>Vehicles of the same structure, which share the rating.</summary>
    public required IReadOnlyList<SheetTwin> Twins { get; init; }
}

/// <summary>A vehicle of the same structure and the document that shows it.</summary>
public sealed record SheetTwin(string Key, string Name, string Evidence);
