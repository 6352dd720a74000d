namespace Toepan.Domain.Programme;

/// <summary>One judged item of a procedure edition; bounds are inclusive.</summary>
/// <param name="Item">Item key, see <see cref="ConductVerdict"/>.</param>
/// <param name="Nominal">Nominal value, or null.</param>
/// <param name="Lower">Lower bound, or null.</param>
/// <param name="Upper">Upper bound, or null.</param>
/// <param name="Unit">Unit.</param>
/// <param name="Required">A required item not recorded counts as outside.</param>
/// <param name="Source">Where the tolerance comes from.</param>
/// <param name="PercentOfDeclared">Where set, the bounds are the declared value ± this many per cent of it, and the item is judged only where one is declared.</param>
public sealed record ConductItem(
    string Item, decimal? Nominal, decimal? Lower, decimal? Upper, string Unit, bool Required, string Source, decimal? PercentOfDeclared = null);

/// <summary>A channel the procedure asks for.</summary>
/// <param name="Location">Main and fine locations 1 and 2, 8 characters.</param>
/// <param name="Component">Physical dimension and direction, 3 characters.</param>
/// <param name="PerOccupant">Once for every occupant, else once for the vehicle.</param>
/// <param name="ExpectedPeak">Expected sign of the main peak: +1, −1, or null where the procedure names none.</param>
public sealed record ProcedureChannel(string Location, string Component, bool PerOccupant, int? ExpectedPeak);

/// <summary>A dummy the procedure seats.</summary>
/// <param name="Position">Seat position, see <see cref="Occupant"/>.</param>
/// <param name="Seat">What the seat is for.</param>
/// <param name="Dummies">Dummy types the procedure allows there.</param>
/// <param name="Required">Whether the seat is always occupied.</param>
public sealed record ProcedureSeat(int Position, string Seat, IReadOnlyList<DummyType> Dummies, bool Required);

/// <summary>One edition of a test procedure: data, read from a file.</summary>
public sealed record ProcedureEdition
{
    /// <summary>Procedure key, e.g. <c>offset-frontal-64</c>.</summary>
    public required string Key { get; init; }
    public required int Edition { get; init; }
    public required string Title { get; init; }

    /// <summary>First day on which runs are made under this edition; a run is judged by the edition in force on its day.</summary>
    public DateOnly InForceFrom { get; init; } = DateOnly.MinValue;

    /// <summary>Nominal impact speed, km/h; the energy ratio is relative to it.</summary>
    public required decimal NominalSpeedKmh { get; init; }
    public required IReadOnlyList<ConductItem> Conduct { get; init; }
    public required IReadOnlyList<ProcedureChannel> Channels { get; init; }

    /// <summary>Names of the measured points the procedure asks for.</summary>
    public required IReadOnlyList<string> Points { get; init; }

    /// <summary>How far the smaller driver's seat stands forward, mm; the laboratory's own figure.</summary>
    public required double SmallerOccupantForwardShiftMm { get; init; }

    /// <summary>Whether the procedure's dummy has load cells at both ends of each tibia.</summary>
    public required bool BothTibiaCells { get; init; }

    /// <summary>Seats and the dummies in them.</summary>
    public IReadOnlyList<ProcedureSeat> Seats { get; init; } = [];

    /// <summary>How zero offsets are taken out, in words that name the method's rule.</summary>
    public string BiasRule { get; init; } = "";

    /// <summary>What is recorded while a run is prepared.</summary>
    public IReadOnlyList<PreparationItem> Preparation { get; init; } = [];
}
