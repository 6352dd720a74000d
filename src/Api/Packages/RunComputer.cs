using Toepan.Api.Programme;
using Toepan.Api.Ratings;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Packages;

/// <summary>A package reduced and rated, and the findings it was rated with.</summary>
internal sealed record ComputedRun(Reduction Reduction, Rating Rating, IReadOnlyList<Finding> Findings, StoredScheme Scheme)
{
    /// <summary>The reader's problems, then the reduction's.</summary>
    public IReadOnlyList<Problem> AllProblems(IReadOnlyList<Problem> read) => [.. read, .. Reduction.Problems];
}

/// <summary>Package + flags → reduction + rating by the rules in force.</summary>
internal static class RunComputer
{
    public static ComputedRun Compute(ProgrammeRules rules, InForce inForce, TestPackage package, IReadOnlyList<ChannelFlag> flags)
    {
        var procedure = rules.Procedure(package.Programme.Procedure, package.Programme.Date);
        var reduction = Reducer.Reduce(package, procedure, flags, rules.MethodsOf(inForce.MethodEdition));
        var inputs = new RatingInputs(reduction.Conduct.Valid, package.Programme.Occupants, reduction.Measures, package.Findings);
        return new ComputedRun(reduction, Rater.Rate(inForce.Scheme.Scheme, inputs), package.Findings, inForce.Scheme);
    }
}
