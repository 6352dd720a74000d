using Toepan.Api.Security;

namespace Toepan.Api.Programme;

/// <summary>A vehicle class and how much of it is tested.</summary>
public sealed record VehicleClassSummary(string Key, string Title, int Vehicles, int Tests);

/// <summary>Vehicle classes of the programme.</summary>
public sealed class VehicleClassService
{
    /// <summary>Every class, by title.</summary>
    public Task<Outcome<IReadOnlyList<VehicleClassSummary>>> List(Viewer viewer, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    /// <summary>Adds a class; managers and administrators only.</summary>
    public Task<Outcome<VehicleClassSummary>> Add(Viewer viewer, string key, string title, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
