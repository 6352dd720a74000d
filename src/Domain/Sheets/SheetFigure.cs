namespace Toepan.Domain.Sheets;

/// <summary>What kind of number (or name) a figure is; decides how it is written.</summary>
public enum SheetFigureKind
{
    /// <summary>A measure, written with its unit.</summary>
    Measure,

    /// <summary>A risk as a count: "about 7", "fewer than 1".</summary>
    Risk,

    /// <summary>An end of the range a risk would have in repeated runs: "4", "fewer than 1".</summary>
    RiskRange,

    /// <summary>A chance as a count: "84", "more than 99", "fewer than 1".</summary>
    Chance,

    /// <summary>A reading of how the run was done, with its unit.</summary>
    Conduct,

    /// <summary>A whole number: a year, a count, a step, an edition.</summary>
    Count,

    /// <summary>A day.</summary>
    Date,

    /// <summary>A name or code that may hold digits.</summary>
    Name,

    /// <summary>A number the sheet itself chose, such as its denominator.</summary>
    Constant,
}

/// <summary>
/// One way a value is written: |value| / <paramref name="Per"/>, rounded half away from zero to <paramref name="Decimals"/>, with its unit. Where the
/// rounded number is under <paramref name="Least"/>, "less than" (of counts "fewer than") that is written.
/// </summary>
/// <param name="Unit">Unit as written: cm, in, km/h, …; empty for none.</param>
/// <param name="Per">Stored units per written unit: 10 mm per cm.</param>
public sealed record SheetShown(string Unit, double Per, int Decimals, double? Least);

/// <summary>A figure that texts bind by name, and the stored value it was made from.</summary>
public sealed record SheetFigure
{
    /// <summary>As a template binds it: <c>{chest.deflection}</c>.</summary>
    public required string Name { get; init; }
    public required SheetFigureKind Kind { get; init; }

    /// <summary>Code of the measure or key of the conduct item it is; null for what no measure stands behind.</summary>
    public string? Code { get; init; }

    /// <summary>Seat position of the measure; null for the vehicle's own.</summary>
    public int? Position { get; init; }

    /// <summary>Run it was measured in; null for what belongs to the sheet.</summary>
    public string? Test { get; init; }

    /// <summary>The stored value in <see cref="Unit"/>; null for names and days.</summary>
    public double? Value { get; init; }
    public string Unit { get; init; } = "";

    /// <summary>The name, or the day as yyyy-mm-dd; null for numbers.</summary>
    public string? Text { get; init; }

    /// <summary>How it is written; a second way stands in parentheses in languages whose readers want both.</summary>
    public IReadOnlyList<SheetShown> Shown { get; init; } = [];
}
