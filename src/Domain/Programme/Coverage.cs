namespace Toepan.Domain.Programme;

/// <summary>A vehicle as coverage counts it.</summary>
/// <param name="Tested">Whether a valid run of its own, a twin's or one carried over stands for it.</param>
/// <param name="SalesSharePercent">Its share of the sales of its class, per cent; null where none is given.</param>
public sealed record CoveredVehicle(bool Tested, decimal? SalesSharePercent);

/// <summary>How much of a class is tested.</summary>
/// <param name="Tested">Vehicles tested.</param>
/// <param name="Planned">Vehicles in the programme, tested or not.</param>
/// <param name="WithShare">Vehicles whose sales share is given.</param>
/// <param name="WeightedPercent">Σ share of the tested / Σ share, over the vehicles whose share is given, in per cent; null where the shares come to nothing.</param>
public sealed record Coverage(int Tested, int Planned, int WithShare, decimal? WeightedPercent)
{
    /// <summary>Counts each vehicle once; the weighted figure leaves out vehicles without a share rather than guess one.</summary>
    public static Coverage Of(IReadOnlyCollection<CoveredVehicle> vehicles)
    {
        var shared = vehicles.Where(vehicle => vehicle.SalesSharePercent is not null).ToList();
        var all = shared.Sum(vehicle => vehicle.SalesSharePercent!.Value);
        var tested = shared.Where(vehicle => vehicle.Tested).Sum(vehicle => vehicle.SalesSharePercent!.Value);
        return new(vehicles.Count(vehicle => vehicle.Tested), vehicles.Count, shared.Count, all == 0 ? null : 100 * tested / all);
    }
}
