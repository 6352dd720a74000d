using Toepan.Api.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Web.Pages.Programme;

/// <summary>The level a vehicle stands at, from its runs.</summary>
public static class VehicleLevel
{
    /// <summary>The lowest level of the valid runs ("two valid runs: the lower rates it"); null where none is rated.</summary>
    public static ProtectionLevel? Overall(this BoardVehicle vehicle) =>
        vehicle.Runs.Where(run => run is { Valid: true, Overall: not null }).Select(run => run.Overall).Max();
}
