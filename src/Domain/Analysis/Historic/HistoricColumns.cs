using System.Text.RegularExpressions;
using Toepan.Domain.Measures;

namespace Toepan.Domain.Analysis.Historic;

/// <summary>The columns of a file of historic results.</summary>
public static partial class HistoricColumns
{
    public const string Test = "test";
    public const string Vehicle = "vehicle";
    public const string Make = "make";
    public const string Model = "model";
    public const string Class = "class";
    public const string ModelYear = "modelYear";
    public const string Procedure = "procedure";
    public const string Date = "date";
    public const string Position = "position";
    public const string Dummy = "dummy";
    public const string TestMass = "testMassKg";

    private static readonly string[] OfVehicle = ["vehicle.", "structure.", "clearance.", "conduct."];

    private static readonly string[] Signed = ["structure.", "clearance.", "vehicle.crush."];

    /// <summary>What every file has, in order; a column for each measure follows.</summary>
    public static IReadOnlyList<string> Fixed { get; } =
        [Test, Vehicle, Make, Model, Class, ModelYear, Procedure, Date, Position, Dummy, TestMass];

    /// <summary>Whether a header names a measure of the catalogue: one code, no pattern.</summary>
    public static bool IsMeasure(string name) => Code().IsMatch(name) && MeasureCatalogue.Find(name) is not null;

    /// <summary>Whether a measure belongs to the vehicle and to no seat.</summary>
    public static bool BelongsToVehicle(string code) => Array.Exists(OfVehicle, start => code.StartsWith(start, StringComparison.Ordinal));

    /// <summary>Whether values below zero mean something; all others are magnitudes.</summary>
    public static bool MayBeNegative(string code) => Array.Exists(Signed, start => code.StartsWith(start, StringComparison.Ordinal));

    [GeneratedRegex(@"\A[a-z][a-z0-9.-]*\z", RegexOptions.CultureInvariant)]
    private static partial Regex Code();
}
