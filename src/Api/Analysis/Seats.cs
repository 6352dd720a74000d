using Toepan.Domain.Programme;

namespace Toepan.Api.Analysis;

/// <summary>Which occupants of a run a question wants.</summary>
internal static class Seats
{
    public const string Driver = "driver";
    public const string Passenger = "passenger";
    public const string All = "all";

    public static IReadOnlyList<string> Words { get; } = [Driver, Passenger, All];

    /// <summary>The occupants wanted. The driver is who sits in seat "driver", else the lowest position; passengers are all others.</summary>
    public static IEnumerable<Occupant> Of(IReadOnlyList<Occupant> occupants, string seat)
    {
        var driver = occupants.FirstOrDefault(occupant => string.Equals(occupant.Seat, Driver, StringComparison.OrdinalIgnoreCase))
            ?? occupants.MinBy(occupant => occupant.Position);
        return seat switch
        {
            Driver => occupants.Where(occupant => occupant == driver),
            All => occupants,
            _ => occupants.Where(occupant => occupant != driver),
        };
    }
}
