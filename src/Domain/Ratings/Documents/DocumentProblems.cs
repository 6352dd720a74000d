using Toepan.Domain.Packages;

namespace Toepan.Domain.Ratings.Documents;

/// <summary>Collects what is wrong with a document, by line.</summary>
internal sealed class DocumentProblems(string file)
{
    private readonly List<Problem> all = [];

    public IReadOnlyList<Problem> All => all;

    /// <summary>Reports once: the same lines are read for every side and dummy they stand for.</summary>
    public void Add(int line, string code, string message)
    {
        var problem = new Problem(ProblemSeverity.Error, $"scheme.{code}", message, file, line);
        if (!all.Contains(problem))
        {
            all.Add(problem);
        }
    }
}
