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
        var known = await context.Database.SqlQuery<bool>($"SELECT to_regclass('lab.release_act') IS NOT NULL AS \"Value\"").SingleAsync(cancellation);
        if (!known)
        {
            return new HashSet<string>();
        }

        string[] asked = [.. tests];
        var found = await context.Database.SqlQuery<string>(
            $"""
            SELECT DISTINCT a.test AS "Value" FROM lab.release_act a
            WHERE a.test = ANY ({asked}) AND NOT EXISTS (SELECT FROM lab.release_hold h WHERE h.release_id = a.id)
            """).ToListAsync(cancellation);
        return found.ToHashSet(StringComparer.Ordinal);
    }
}
