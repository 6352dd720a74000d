using Toepan.Api.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis;

/// <summary>Which runs of the programme a question is about.</summary>
public enum RunChoice
{
    /// <summary>Valid runs, and summary results.</summary>
    Valid,

    /// <summary>Every run, valid or not, and summary results.</summary>
    All,

    /// <summary>The run that rates each vehicle, and nothing else: a summary result rates none.</summary>
    Rating,

    /// <summary>Runs with channels alone, valid ones.</summary>
    Measured,

    /// <summary>Summary results alone.</summary>
    Summary,
}

/// <summary>What to read of the programme's measures.</summary>
public sealed record MeasureQuestion
{
    /// <summary>Class keys; empty = every class.</summary>
    public IReadOnlyList<string> Classes { get; init; } = [];

    /// <summary>Measure codes, answered in this order; empty = every code that has a value.</summary>
    public IReadOnlyList<string> Measures { get; init; } = [];

    /// <summary>driver, passenger or all.</summary>
    public string Seat { get; init; } = Seats.Driver;

    /// <summary>Procedure key; null = any.</summary>
    public string? Procedure { get; init; }

    public RunChoice Runs { get; init; } = RunChoice.Valid;
}

/// <summary>Whether a row comes from a run with channels or from a summary.</summary>
public enum ResultKind
{
    /// <summary>Reduced from a package.</summary>
    Run,

    /// <summary>A historic result, known by its summary alone; never rated.</summary>
    Summary,
}

/// <summary>
/// One occupant of one run. <see cref="Values"/> stand in the order of <see cref="MeasureRows.Measures"/>; null = absent. A measure of the vehicle stands in
/// every row of its run and counts once (<see cref="MeasureRows.Column"/>).
/// </summary>
public sealed record MeasuredRow
{
    public required string Test { get; init; }
    public required ResultKind Kind { get; init; }
    public required VehicleName Vehicle { get; init; }

    /// <summary>A summary's own model year; of a run, its vehicle's first.</summary>
    public int? ModelYear { get; init; }

    /// <summary>Mass as tested, kg.</summary>
    public double? TestMassKg { get; init; }

    /// <summary>Kerb mass of the vehicle, kg.</summary>
    public double? KerbMassKg { get; init; }

    /// <summary>What masses are compared by: the kerb mass, else the mass tested.</summary>
    public double? MassKg => KerbMassKg ?? TestMassKg;
    public required string Procedure { get; init; }
    public DateOnly? Date { get; init; }

    /// <summary>Null for a summary: its conduct is not known here.</summary>
    public bool? Valid { get; init; }

    /// <summary>Overall level of the current rating; null where there is none.</summary>
    public ProtectionLevel? Overall { get; init; }
    public int? Position { get; init; }
    public string? Seat { get; init; }
    public string? Dummy { get; init; }

    /// <summary>Edition the values were reduced under; null for a summary.</summary>
    public string? MethodEdition { get; init; }

    /// <summary>Number of the reduction, or of the batch of historic results, that the values come from.</summary>
    public required long Source { get; init; }
    public required IReadOnlyList<double?> Values { get; init; }
}

/// <summary>The answer: rows by test code, seats in order.</summary>
/// <param name="Measures">Codes, in the order of every row's values.</param>
/// <param name="Units">Units of the codes.</param>
public sealed record MeasureRows(IReadOnlyList<string> Measures, IReadOnlyList<string> Units, IReadOnlyList<MeasuredRow> Rows)
{
    /// <summary>The values there are of one code; a measure of the vehicle once a run.</summary>
    public double[] Column(int code)
    {
        var once = Domain.Analysis.Historic.HistoricColumns.BelongsToVehicle(Measures[code]);
        var values = new List<double>(Rows.Count);
        string? last = null;
        foreach (var row in Rows)
        {
            if (row.Values[code] is { } value && !(once && row.Test == last))
            {
                values.Add(value);
                last = row.Test;
            }
        }

        return [.. values];
    }
}
