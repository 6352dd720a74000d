using Microsoft.EntityFrameworkCore;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>The runs a recomputation covers and what is left of them.</summary>
internal static class RecomputationItems
{
    /// <summary>Every run of a procedure that has a rating. In the transaction that begins the recomputation.</summary>
    public static Task Add(ProgrammeDb context, long id, string procedure, CancellationToken cancellation) => context.Database.ExecuteSqlAsync(
        $"""
        INSERT INTO lab.recomputation_item (recomputation_id, test)
        SELECT {id}, run.test FROM lab.test_run run
        WHERE run.procedure = {procedure} AND EXISTS (SELECT FROM lab.current_rating c WHERE c.test = run.test)
        """, cancellation);

    /// <summary>The next runs to do, in the order of their codes; none when all are done.</summary>
    public static async Task<List<string>> Next(ProgrammeDb context, long id, int atMost, CancellationToken cancellation) =>
        await context.Database.SqlQuery<string>(
            $"""
            SELECT i.test AS "Value" FROM lab.recomputation_item i
            WHERE i.recomputation_id = {id}
              AND NOT EXISTS (SELECT FROM lab.recomputation_step s WHERE s.recomputation_id = i.recomputation_id AND s.test = i.test)
            ORDER BY i.test LIMIT {atMost}
            """).ToListAsync(cancellation);
}
