using Toepan.Domain.Channels;

namespace Toepan.Domain.Analysis.Keystones;

/// <summary>A channel source that remembers what it was asked: a result can only depend on channels that answer one of these patterns.</summary>
internal sealed class AskedPatterns(IChannelSource source) : IChannelSource
{
    private readonly HashSet<ChannelPattern> asked = [];

    public ChannelAnswer Find(ChannelPattern pattern, int filterClass)
    {
        asked.Add(pattern);
        return source.Find(pattern, filterClass);
    }

    public bool Has(ChannelPattern pattern)
    {
        asked.Add(pattern);
        return source.Has(pattern);
    }

    /// <summary>Whether any of the channels could have mattered.</summary>
    public bool Concerned(IReadOnlyList<string> codes) => codes.Any(code => asked.Any(pattern => pattern.Matches(code)));
}
