using Toepan.Api.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Web.Pages.Programme;

/// <summary>The level a vehicle stands at, from its runs.</summary>
public static class VehicleLevel
{
    /// <summary>The lowest level of the runs that count (valid, or accepted with a reason): of two the lower rates. Null where none is rated.</summary>
    public static ProtectionLevel? Overall(this BoardVehicle vehicle) =>
        vehicle.Runs.Where(run => run is { Counts: true, Overall: not null }).Select(run => run.Overall).Max();
}
