namespace Toepan.Domain.Analysis.Historic;

/// <summary>Problem codes of historic results. Stable: machines may act on them.</summary>
public static class HistoricProblems
{
    /// <summary>No text this service can read, or no header line.</summary>
    public const string Unreadable = "results.unreadable";
    public const string Quote = "results.quote";
    public const string FieldCount = "results.field-count";
    public const string TooManyRows = "results.rows";
    public const string TooManyColumns = "results.columns";
    public const string UnknownColumn = "results.unknown-column";
    public const string DuplicateColumn = "results.duplicate-column";
    public const string MissingColumn = "results.missing-column";

    /// <summary>A cell that must hold something is empty.</summary>
    public const string Missing = "results.missing";

    /// <summary>A cell holds something else than its column does.</summary>
    public const string Value = "results.value";

    /// <summary>A number is outside its limits.</summary>
    public const string Range = "results.range";

    /// <summary>A magnitude is below zero; kept as it is.</summary>
    public const string Sign = "results.sign";

    /// <summary>A test has one position twice.</summary>
    public const string PositionTwice = "results.position-twice";

    /// <summary>Rows of one test, or of one vehicle, say different things.</summary>
    public const string Disagrees = "results.disagrees";

    /// <summary>A test without any value.</summary>
    public const string NoValue = "results.no-value";

    /// <summary>Fields are apart by semicolons; decimal commas are read.</summary>
    public const string Semicolon = "results.semicolon";

    /// <summary>The programme has the vehicle in another class.</summary>
    public const string VehicleClass = "results.vehicle-class";

    /// <summary>The programme knows the vehicle by another make or model.</summary>
    public const string VehicleName = "results.vehicle-name";
}
