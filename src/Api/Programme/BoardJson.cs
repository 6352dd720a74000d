using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>A class to add.</summary>
public sealed record NewClassJson(string? Key, string? Title);

/// <summary>A twin to record.</summary>
public sealed record NewTwinJson(string? Vehicle, string? Make, string? Model, int? ModelYearFrom, int? ModelYearTo, string? Evidence)
{
    public NewTwin ToTwin() => new(Vehicle ?? "", Make, Model, ModelYearFrom, ModelYearTo, Evidence ?? "");
}

/// <summary>The board as the contract writes it.</summary>
public sealed record BoardJson(IReadOnlyList<BoardTaskJson> NeedsYou, IReadOnlyList<BoardClassJson> Classes)
{
    public static BoardJson Of(Board board) => new(
        [.. board.NeedsYou.Select(task => new BoardTaskJson(task.Test, task.Vehicle.Key, task.What, task.Since, task.Days))],
        [.. board.Classes.Select(BoardClassJson.Of)]);
}

/// <summary>Something that waits for a person.</summary>
public sealed record BoardTaskJson(string Test, string Vehicle, string What, DateTimeOffset Since, int Days);

/// <summary>A class on the board, with how much of it is tested.</summary>
public sealed record BoardClassJson(string Class, string Title, Coverage Coverage, IReadOnlyList<BoardVehicleJson> Vehicles)
{
    public static BoardClassJson Of(BoardClass row) => new(row.Key, row.Title, row.Coverage, [.. row.Vehicles.Select(BoardVehicleJson.Of)]);
}

/// <summary>A vehicle on the board.</summary>
public sealed record BoardVehicleJson(
    string Vehicle, string? Make, string? Model, string State, DateTimeOffset Since, int Days, IReadOnlyList<string> Tests, IReadOnlyList<string> Planned,
    DateOnly? PlannedDate, string? SharedFrom)
{
    public static BoardVehicleJson Of(BoardVehicle row) => new(
        row.Vehicle.Key, row.Vehicle.Make, row.Vehicle.Model, row.State, row.Since, row.Days, [.. row.Runs.Select(run => run.Test)],
        [.. row.Planned.Select(plan => plan.Test)], row.Planned.Count > 0 ? row.Planned[0].PlannedDate : row.PlannedDate, row.SharedFrom?.Key);
}
