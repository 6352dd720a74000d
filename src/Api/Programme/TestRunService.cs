using Toepan.Api.Security;

namespace Toepan.Api.Programme;

/// <summary>Test runs: lists and one in full.</summary>
public sealed class TestRunService
{
    /// <summary>The runs that pass the filter, by test code.</summary>
    public Task<Outcome<IReadOnlyList<TestRunSummary>>> List(Viewer viewer, TestRunFilter filter, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    public Task<Outcome<TestRunDetail>> Get(Viewer viewer, string test, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
