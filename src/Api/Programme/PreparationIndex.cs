using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>A preparation item as it stands, and who recorded it.</summary>
public sealed record PreparationEntry(PreparationVerdict Verdict, string? RecordedBy, DateTimeOffset? RecordedAt);

/// <summary>The latest record of every preparation item.</summary>
internal static class PreparationIndex
{
    /// <summary>Every item of the edition, in its order.</summary>
    public static async Task<IReadOnlyList<PreparationEntry>> Load(
        ProgrammeDb context, string test, ProcedureEdition edition, CancellationToken cancellation)
    {
        var rows = await Rows(context, test, cancellation);
        return [.. edition.Preparation.Select(item => Entry(item, rows.LastOrDefault(row => row.Item == item.Item)))];
    }

    /// <summary>Every record of a run, earlier ones too, in order.</summary>
    public static Task<List<PreparationRow>> Rows(ProgrammeDb context, string test, CancellationToken cancellation) =>
        context.Set<PreparationRow>().AsNoTracking().Where(row => row.Test == test).OrderBy(row => row.Id).ToListAsync(cancellation);

    private static PreparationEntry Entry(PreparationItem item, PreparationRow? row) =>
        new(PreparationJudge.Judge(item, row?.Text), row?.RecordedBy, row?.RecordedAt);
}
