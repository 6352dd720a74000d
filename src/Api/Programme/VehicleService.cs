using Toepan.Api.Security;

namespace Toepan.Api.Programme;

/// <summary>Vehicles with their runs, ratings and twins.</summary>
public sealed class VehicleService
{
    /// <summary>Vehicles of a class, or all; by make and model.</summary>
    public Task<Outcome<IReadOnlyList<VehicleSummary>>> List(Viewer viewer, string? vehicleClass = null, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    public Task<Outcome<VehicleDetail>> Get(Viewer viewer, string key, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    /// <summary>Records that another vehicle has the same structure, with the evidence; managers and administrators only.</summary>
    public Task<Outcome<Twin>> AddTwin(Viewer viewer, string key, NewTwin twin, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
