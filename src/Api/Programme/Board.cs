using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>The programme at a glance.</summary>
/// <param name="NeedsYou">What waits for this viewer, oldest first.</param>
/// <param name="Classes">Class × vehicle with the state word.</param>
public sealed record Board(IReadOnlyList<BoardTask> NeedsYou, IReadOnlyList<BoardClass> Classes);

/// <summary>Something that waits for a person.</summary>
/// <param name="Test">Run concerned; empty where it is about a vehicle.</param>
/// <param name="Vehicle">Its vehicle.</param>
/// <param name="What">What to do, in a sentence.</param>
/// <param name="Since">Since when it waits.</param>
/// <param name="Days">Whole days since then.</param>
public sealed record BoardTask(string Test, VehicleName Vehicle, string What, DateTimeOffset Since, int Days)
{
    /// <summary>Address, within the service, of the page on which it is done.</summary>
    public string Address { get; init; } = $"/tests/{Test}";
}

/// <summary>A class on the board.</summary>
public sealed record BoardClass(string Key, string Title, IReadOnlyList<BoardVehicle> Vehicles)
{
    /// <summary>How much of it is tested; of the whole class, whatever is filtered.</summary>
    public required Coverage Coverage { get; init; }
}

/// <summary>A vehicle on the board: the state of its latest run that counts.</summary>
public sealed record BoardVehicle(VehicleName Vehicle, string State, DateTimeOffset Since, int Days, IReadOnlyList<TestRunSummary> Runs)
{
    /// <summary>Runs of it that are planned and not made, by date.</summary>
    public IReadOnlyList<PlannedRun> Planned { get; init; } = [];

    /// <summary>The vehicle whose rating it has, as a twin or by a carry-over; its state and runs are that vehicle's. Null where it has its own.</summary>
    public VehicleName? SharedFrom { get; init; }

    /// <summary>Day its first run is planned for, where none is planned by code.</summary>
    public DateOnly? PlannedDate { get; init; }
}
