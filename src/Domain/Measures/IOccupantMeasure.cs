using Toepan.Domain.Channels;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures;

/// <summary>What an occupant measure may look at.</summary>
/// <param name="Occupant">Seat position and dummy.</param>
/// <param name="Channels">Channels by pattern and class.</param>
/// <param name="BothTibiaCells">Whether the dummy of the procedure has load cells at both ends of each tibia; see <see cref="ProcedureEdition.BothTibiaCells"/>.</param>
public sealed record OccupantContext(Occupant Occupant, IChannelSource Channels, bool BothTibiaCells = true)
{
    /// <summary>The method edition.</summary>
    public Methods Methods { get; init; } = Methods.First;
}

/// <summary>One occupant measure (or a family that shares its work, such as tension and compression). One file each.</summary>
public interface IOccupantMeasure
{
    /// <summary>The measures, present or absent with a reason; always the same codes for every occupant.</summary>
    IEnumerable<Measure> Reduce(OccupantContext context);
}
