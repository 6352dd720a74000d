using Toepan.Api.Security;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>The procedure editions this program carries.</summary>
public sealed class ProcedureService
{
    private readonly IReadOnlyList<ProcedureEdition> editions = ProcedureLibrary.All;

    /// <summary>Every edition, by key and edition.</summary>
    public Task<Outcome<IReadOnlyList<ProcedureEdition>>> List(Viewer viewer) => Task.FromResult(
        Access.ToRead(viewer) is { } refusal ? refusal : Outcome.List(editions));

    /// <summary>One edition; the latest where none is named.</summary>
    public Task<Outcome<ProcedureEdition>> Get(Viewer viewer, string key, int? edition = null) => Task.FromResult<Outcome<ProcedureEdition>>(
        Access.ToRead(viewer) is { } refusal ? refusal
        : editions.LastOrDefault(known => known.Key == key && (edition is null || known.Edition == edition)) is { } found ? found
        : Failure.NotFound("procedure", edition is null ? key : $"{key} edition {edition}"));
}
