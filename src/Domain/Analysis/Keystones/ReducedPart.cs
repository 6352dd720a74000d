using Toepan.Domain.Channels;
using Toepan.Domain.Measures;

namespace Toepan.Domain.Analysis.Keystones;

/// <summary>A piece of the reduction that is computed by itself, its measures, and the channels it looked for.</summary>
internal sealed class ReducedPart
{
    private readonly Func<IChannelSource, IReadOnlyList<Measure>> reduce;
    private readonly AskedPatterns asked;

    public ReducedPart(IChannelSource all, Func<IChannelSource, IReadOnlyList<Measure>> reduce)
    {
        this.reduce = reduce;
        asked = new(all);
        Measures = reduce(asked);
    }

    /// <summary>With every channel.</summary>
    public IReadOnlyList<Measure> Measures { get; }

    /// <summary>Computed again only where a channel left out could matter.</summary>
    public IReadOnlyList<Measure> Without(IReadOnlyList<string> codes, IChannelSource rest) => asked.Concerned(codes) ? reduce(rest) : Measures;
}
