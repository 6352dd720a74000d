using Toepan.Api.Programme;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Packages;

/// <summary>A package reduced and rated.</summary>
internal sealed record ComputedRun(Reduction Reduction, Rating Rating)
{
    /// <summary>The reader's problems, then the reduction's.</summary>
    public IReadOnlyList<Problem> AllProblems(IReadOnlyList<Problem> read) => [.. read, .. Reduction.Problems];
}

/// <summary>Package + flags → reduction + rating by the default scheme.</summary>
internal static class RunComputer
{
    public static ComputedRun Compute(ProgrammeRules rules, TestPackage package, IReadOnlyList<ChannelFlag> flags)
    {
        var procedure = rules.Procedure(package.Programme.Procedure, package.Programme.Date);
        var reduction = Reducer.Reduce(package, procedure, flags);
        var inputs = new RatingInputs(reduction.Conduct.Valid, package.Programme.Occupants, reduction.Measures, package.Findings);
        return new ComputedRun(reduction, Rater.Rate(rules.DefaultScheme, inputs));
    }
}
