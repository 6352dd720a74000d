using Toepan.Api.Security;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings;

/// <summary>An edition of the rating rules.</summary>
public sealed record SchemeSummary(string Key, string Title, bool Default);

/// <summary>Ratings of a run.</summary>
public sealed class RatingService
{
    /// <summary>The stored rating of the current reduction, or the one a named scheme gives.</summary>
    /// <param name="scheme">Scheme key; null = the default scheme.</param>
    public Task<Outcome<Rating>> Get(Viewer viewer, string test, string? scheme = null, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    /// <summary>Known schemes.</summary>
    public Task<Outcome<IReadOnlyList<SchemeSummary>>> Schemes(Viewer viewer, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
