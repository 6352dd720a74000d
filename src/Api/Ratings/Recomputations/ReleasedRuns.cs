using Microsoft.EntityFrameworkCore;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>Which runs have a rating that is released or on its way to the public: no recomputation moves it.</summary>
public interface IReleasedRuns
{
    /// <summary>Those of the tests that are released.</summary>
    Task<IReadOnlySet<string>> Among(ProgrammeDb context, IReadOnlyCollection<string> tests, CancellationToken cancellation);
}

/// <summary>The store's release acts that were not taken back.</summary>
internal sealed class ReleasedRuns : IReleasedRuns
{
    public async Task<IReadOnlySet<string>> Among(ProgrammeDb context, IReadOnlyCollection<string> tests, CancellationToken cancellation)
    {
        string[] asked = [.. tests];
        var found = await context.Database.SqlQuery<string>(
            $"""
            SELECT DISTINCT a.test AS "Value" FROM lab.release_act a
            JOIN pub.release r ON r.slug = a.slug AND r.version = a.version AND r.visible_to IS NULL
            WHERE a.test = ANY ({asked})
            """).ToListAsync(cancellation);
        return found.ToHashSet(StringComparer.Ordinal);
    }
}
