using Microsoft.Extensions.Caching.Memory;
using Toepan.Domain.Analysis.Traces;

namespace Toepan.Api.Analysis.Traces;

/// <summary>What makes one viewed channel: a reduction is never changed, so neither is this.</summary>
internal readonly record struct TraceKey(long Reduction, string Code, int? FilterClass);

/// <summary>Decoded and filtered channels, so that zooming reads and filters nothing again. Holds at most <see cref="MostBytes"/> of samples; the least used go first.</summary>
public sealed class TraceCache : IDisposable
{
    /// <summary>Bound of the samples kept.</summary>
    public const long MostBytes = 96L << 20;

    private readonly MemoryCache cache = new(new MemoryCacheOptions { SizeLimit = MostBytes });

    internal TraceAnswer? Find(TraceKey key) => cache.Get<TraceAnswer>(key);

    internal void Keep(TraceKey key, TraceAnswer answer) =>
        cache.Set(key, answer, new MemoryCacheEntryOptions { Size = 256 + ((answer.Signal?.History.Count ?? 0) * (long)sizeof(double)) });

    public void Dispose() => cache.Dispose();
}
