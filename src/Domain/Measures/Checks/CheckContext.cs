using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Pulse;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Checks;

/// <summary>What a cross-check may look at.</summary>
public sealed record CheckContext(ChannelSource Channels, PulseContext Pulse, IReadOnlyList<Occupant> Occupants, IReadOnlyList<Finding> Findings);

/// <summary>One cross-check of methods edition 1. One file each; expectations are common practice, no source.</summary>
public interface ICrossCheck
{
    /// <summary>Verdicts; none where the package holds nothing the check is about.</summary>
    IEnumerable<CrossCheck> Run(CheckContext context);
}
