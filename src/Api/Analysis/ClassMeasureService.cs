using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Analysis;

namespace Toepan.Api.Analysis;

/// <summary>Measures across a vehicle class.</summary>
public sealed class ClassMeasureService(IDbContextFactory<ProgrammeDb> contexts, ProgrammeMeasures measures)
{
    /// <summary>The runs of the class that are asked for, summary results with them, and statistics over the rows given.</summary>
    public async Task<Outcome<ClassMeasures>> Get(
        Viewer viewer, string vehicleClass, ClassMeasureQuery query, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        if (ClassMeasureQuery.Choice(query.Runs) is not { } choice)
        {
            return Failure.BadRequest($"runs is '{query.Runs}'; it is one of {string.Join(", ", ClassMeasureQuery.RunChoices)}.");
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var known = await context.Set<VehicleClassRow>().AsNoTracking().SingleOrDefaultAsync(row => row.Key == vehicleClass, cancellation);
        if (known is null)
        {
            return Failure.NotFound("vehicle class", vehicleClass);
        }

        var question = new MeasureQuestion
        {
            Classes = [vehicleClass], Measures = query.Measures, Seat = query.Seat, Procedure = query.Procedure, Runs = choice,
        };
        var outcome = await measures.Load(viewer, question, cancellation);
        return outcome.Map(rows => new ClassMeasures(known.Key, known.Title, query.Seat, query.Runs, query.Procedure, rows.Measures, rows.Rows, Statistics(rows)));
    }

    private static List<ClassMeasureStatistics> Statistics(MeasureRows rows) =>
        [.. rows.Measures.Select((code, at) => ClassMeasureStatistics.Of(code, rows.Units[at], SampleStatistics.Of(rows.Column(at))))];
}
