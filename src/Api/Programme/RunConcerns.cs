using Toepan.Api.Store;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Programme;

/// <summary>What speaks against the equipment of runs; each an approval must accept explicitly.</summary>
internal static class RunConcerns
{
    /// <summary>By test code.</summary>
    public static Task<ILookup<string, RunConcern>> Load(ProgrammeDb context, IReadOnlyCollection<string> tests, CancellationToken cancellation) =>
        Task.FromResult(Array.Empty<(string Test, RunConcern Concern)>().ToLookup(pair => pair.Test, pair => pair.Concern));
}
