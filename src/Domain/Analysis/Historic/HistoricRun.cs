namespace Toepan.Domain.Analysis.Historic;

/// <summary>A dummy of a historic result; the dummy's code may not be recorded.</summary>
public sealed record HistoricOccupant(int Position, string? Dummy);

/// <summary>One value of a historic result, in the catalogue's unit.</summary>
/// <param name="Code">Measure code.</param>
/// <param name="Position">Seat position, or <see cref="OfVehicle"/>.</param>
/// <param name="Value">The value as the file gives it.</param>
public readonly record struct HistoricValue(string Code, int Position, double Value)
{
    /// <summary>Stands for the vehicle where a measure belongs to no seat.</summary>
    public const int OfVehicle = 0;
}

/// <summary>The summary of one run made elsewhere or before: no channels, no points, nothing to reduce.</summary>
public sealed record HistoricRun
{
    public required string Test { get; init; }

    /// <summary>Vehicle key.</summary>
    public required string Vehicle { get; init; }
    public string? Make { get; init; }
    public string? Model { get; init; }

    /// <summary>Class key; null where the file leaves it to the programme.</summary>
    public string? Class { get; init; }
    public int? ModelYear { get; init; }

    /// <summary>Procedure key.</summary>
    public required string Procedure { get; init; }
    public DateOnly? Date { get; init; }
    public decimal? TestMassKg { get; init; }

    /// <summary>By position.</summary>
    public required IReadOnlyList<HistoricOccupant> Occupants { get; init; }

    /// <summary>By code, then position.</summary>
    public required IReadOnlyList<HistoricValue> Values { get; init; }

    /// <summary>Line of its first row.</summary>
    public required int Line { get; init; }

    /// <summary>Lower-case hex SHA-256 over what is kept of the run, whatever the order of rows and columns: equal when the content is.</summary>
    public required string Digest { get; init; }
}

/// <summary>What a file of historic results says.</summary>
/// <param name="Runs">Its runs in the order of their first rows; empty where the file is refused.</param>
/// <param name="Rows">Rows read, the header left out.</param>
/// <param name="Problems">What is wrong or odd.</param>
/// <param name="Refused">Whether the file as a whole is refused.</param>
public sealed record HistoricReading(IReadOnlyList<HistoricRun> Runs, int Rows, IReadOnlyList<Packages.Problem> Problems, bool Refused);
