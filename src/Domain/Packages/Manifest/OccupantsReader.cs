using System.Globalization;
using System.Text.Json;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Packages.Manifest;

/// <summary>The member <c>occupants</c>: at least one, each with a seat position of its own and a dummy this edition knows.</summary>
internal sealed class OccupantsReader(ProblemList problems, Dictionary<string, JsonElement> unknown)
{
    private const int LastPosition = 9;
    private const int LongestSeat = 60;
    private const int LongestDummy = 40;

    public IReadOnlyList<Occupant>? Read(JsonView root)
    {
        if (root.Objects("occupants", (1, LastPosition), required: true) is not { } views)
        {
            return null;
        }

        var occupants = new List<Occupant>();
        foreach (var view in views)
        {
            if (Occupant(view) is { } occupant)
            {
                if (occupants.Exists(other => other.Position == occupant.Position))
                {
                    problems.Reject(ProblemCodes.DuplicatePosition, $"Two occupants sit at position {occupant.Position}.", view.PlaceOf("position"), occupant.Position.ToString(CultureInfo.InvariantCulture));
                }

                occupants.Add(occupant);
            }
        }

        return occupants.Count == views.Count ? occupants : null;
    }

    private Occupant? Occupant(JsonView view)
    {
        var position = view.Whole("position", 1, LastPosition, required: true);
        var seat = view.Text("seat", LongestSeat);
        if (seat is null)
        {
            problems.Warn(ProblemCodes.NoSeat, $"{view.Path} does not say what the seat is for; it is not taken for the driver's.", view.PlaceOf("seat"));
        }

        var dummy = Dummy(view);
        view.KeepUnknown(unknown);
        return position is null || dummy is null ? null : new Occupant(position.Value, seat ?? "", dummy.Value);
    }

    private DummyType? Dummy(JsonView view)
    {
        var code = view.Text("dummy", LongestDummy, required: true);
        var names = Enum.GetNames<DummyType>();
        if (code is null || names.Contains(code))
        {
            return code is null ? null : Enum.Parse<DummyType>(code);
        }

        problems.Reject(ProblemCodes.UnknownDummy, $"The dummy '{ProblemList.Show(code)}' is unknown; it must be {string.Join(" or ", names)}.", view.PlaceOf("dummy"), code, string.Join(", ", names));
        return null;
    }
}
