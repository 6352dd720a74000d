using System.Text.RegularExpressions;

namespace Toepan.Api.Programme;

/// <summary>A run that is to be made, or was planned before it was made.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Vehicle">Its vehicle.</param>
/// <param name="Procedure">Procedure key.</param>
/// <param name="ProcedureEdition">Edition it is prepared and judged by.</param>
/// <param name="PlannedDate">Day it is planned for.</param>
/// <param name="RepeatOf">Run it repeats, or null.</param>
/// <param name="RanOn">Day of the crash, or null.</param>
/// <param name="PreparedBy">Who signed the preparation off, or null.</param>
/// <param name="PreparedAt">When, or null.</param>
/// <param name="State">State word.</param>
/// <param name="Since">Since when.</param>
/// <param name="PackageStored">Whether its package has come.</param>
/// <param name="Version">For the next change.</param>
public sealed record PlannedRun(
    string Test, VehicleName Vehicle, string Procedure, int ProcedureEdition, DateOnly PlannedDate, string? RepeatOf, DateOnly? RanOn,
    string? PreparedBy, DateTimeOffset? PreparedAt, string State, DateTimeOffset Since, bool PackageStored, uint Version);

/// <summary>A run to plan, under the edition of the procedure in force on its day.</summary>
public sealed record NewPlan(string Test, string Vehicle, string Procedure, DateOnly Date, string? RepeatOf);

/// <summary>Test codes.</summary>
internal static partial class TestCode
{
    public static bool IsValid(string? code) => Shape().IsMatch(code ?? "");

    [GeneratedRegex(@"\A[A-Z]{2,4}-[0-9]{3,6}\z")]
    private static partial Regex Shape();
}
