using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Analysis.Explore;

/// <summary>Questions over the whole programme.</summary>
public sealed class ExploreService(IDbContextFactory<ProgrammeDb> contexts, ProgrammeMeasures measures)
{
    /// <summary>The answer of a question; runs without a figure are counted and left out.</summary>
    public async Task<Outcome<ExploreAnswer>> Ask(Viewer viewer, ExploreQuestion question, CancellationToken cancellation = default)
    {
        if ((Access.ToRead(viewer) ?? question.Check()) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var classes = await context.Set<VehicleClassRow>().AsNoTracking().OrderBy(row => row.Title).ToListAsync(cancellation);
        if (question.Classes.FirstOrDefault(key => classes.TrueForAll(row => row.Key != key)) is { } unknown)
        {
            return Failure.NotFound("vehicle class", unknown);
        }

        var titles = classes.ToDictionary(row => row.Key, row => row.Title);
        var rows = await measures.Load(viewer, ExplorePoints.Asked(question), cancellation);
        return rows.Map(found => ExploreAnswers.Of(question, [.. question.Classes.Select(key => titles[key])], ExplorePoints.Of(found, question, titles)));
    }
}
