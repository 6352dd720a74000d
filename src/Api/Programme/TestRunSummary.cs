using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Programme;

/// <summary>One test run in a list.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Vehicle">The vehicle it belongs to.</param>
/// <param name="Procedure">Procedure key.</param>
/// <param name="Date">Date of the run.</param>
/// <param name="Laboratory">Where it was run, or null.</param>
/// <param name="RepeatOf">Test code of the run it repeats, known or not, or null.</param>
/// <param name="Valid">Whether every conduct item holds.</param>
/// <param name="Overall">Overall level of the current rating, or null.</param>
/// <param name="NotRated">Why there is no overall level, or null.</param>
/// <param name="State">State word.</param>
/// <param name="Since">Since when it is in that state.</param>
/// <param name="Occupants">Dummies by seat.</param>
/// <param name="Problems">Number of problems of severity warning or error.</param>
public sealed record TestRunSummary(
    string Test, VehicleName Vehicle, string Procedure, DateOnly Date, string? Laboratory, string? RepeatOf, bool Valid,
    ProtectionLevel? Overall, string? NotRated, string State, DateTimeOffset Since, IReadOnlyList<Occupant> Occupants, int Problems)
{
    /// <summary>Whether a reviewer accepted the run, although not valid, with a reason.</summary>
    public bool Accepted { get; init; }

    /// <summary>Valid, or accepted with a reason: such a run may rate its vehicle.</summary>
    public bool Counts => Valid || Accepted;

    /// <summary>Concerns about its equipment that nobody has accepted, each in a sentence without a full stop.</summary>
    public IReadOnlyList<string> Concerns { get; init; } = [];
}

/// <summary>Enough of a vehicle to name and link it.</summary>
public sealed record VehicleName(string Key, string? Make, string? Model, string Class)
{
    /// <summary>Make and model, or the key where neither is known.</summary>
    public string Title => (Make, Model) is (null, null) ? Key : $"{Make} {Model}".Trim();
}

/// <summary>Which runs to list; null = any.</summary>
/// <param name="Class">Vehicle class key.</param>
/// <param name="Vehicle">Vehicle key.</param>
/// <param name="State">State word.</param>
/// <param name="Valid">Valid runs only, or only those not valid.</param>
public sealed record TestRunFilter(string? Class = null, string? Vehicle = null, string? State = null, bool? Valid = null);
