using Toepan.Api.Store;

namespace Toepan.Api.Packages;

/// <summary>Whether a test code is free for a run. Asked in the run's transaction; what it answers holds until that ends.</summary>
public interface ITestCodeGuard
{
    /// <summary>The refusal where something else bears the code, or null.</summary>
    Task<Failure?> Check(ProgrammeDb context, string test, CancellationToken cancellation);
}
