using Toepan.Api.Security;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;

namespace Toepan.Api.Measures;

/// <summary>What was reduced from a run.</summary>
public sealed class MeasureService
{
    /// <summary>All measures of the current reduction (or an earlier one), in the reducer's order.</summary>
    public Task<Outcome<IReadOnlyList<Measure>>> Get(Viewer viewer, string test, long? reduction = null, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    /// <summary>Alignment and displacements of the current reduction.</summary>
    public Task<Outcome<StructureResult>> Structure(Viewer viewer, string test, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    /// <summary>What film and inspection showed, as the package says it.</summary>
    public Task<Outcome<IReadOnlyList<Finding>>> Findings(Viewer viewer, string test, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    /// <summary>Every reduction of the run, latest first.</summary>
    public Task<Outcome<IReadOnlyList<ReductionSummary>>> Reductions(Viewer viewer, string test, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
