using Toepan.Domain.Ratings;

namespace Toepan.Api.Programme;

/// <summary>
/// The schemes of the store as this process last heard of them, for whoever only needs their words and bounds. What writes a rating asks the
/// store itself. Safe to read from every thread.
/// </summary>
public sealed class SchemeShelf
{
    private volatile Content content = new(new Dictionary<string, Scheme>(), null);

    /// <summary>The scheme that rates new uploads; null until the store has been asked.</summary>
    public Scheme? Default => content.Default;

    /// <summary>The scheme of a key, or null.</summary>
    public Scheme? Find(string key) => content.ByKey.GetValueOrDefault(key);

    internal void Put(IReadOnlyDictionary<string, Scheme> byKey, Scheme current) => content = new(byKey, current);

    private sealed record Content(IReadOnlyDictionary<string, Scheme> ByKey, Scheme? Default);
}
