using Microsoft.EntityFrameworkCore;
using Toepan.Api.Channels.Tables;
using Toepan.Api.Packages;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>Reduces and rates runs anew from their kept packages, under the flags and findings that stand, by a candidate method edition. Nothing becomes current.</summary>
internal sealed class MethodRun(ProgrammeRules rules, TimeProvider time)
{
    public async Task<List<RecomputationStepRow>> Do(ProgrammeDb context, Recomputation work, IReadOnlyList<string> tests, CancellationToken cancellation)
    {
        var sha256 = await context.Set<RecomputationRow>().Where(row => row.Id == work.Id).Select(row => row.SchemeSha256).SingleAsync(cancellation);
        var candidate = new InForce(await SchemeStore.Get(context, sha256, cancellation), work.MethodEdition);
        var steps = new List<RecomputationStepRow>();
        foreach (var test in tests)
        {
            steps.Add(await Step(context, work, test, candidate, cancellation));
        }

        return steps;
    }

    private async Task<RecomputationStepRow> Step(ProgrammeDb context, Recomputation work, string test, InForce candidate, CancellationToken cancellation)
    {
        var at = time.GetUtcNow();
        var current = await CurrentRun.Find(context, test, cancellation) ?? throw new InvalidOperationException($"Run {test} has no rating.");
        var step = new RecomputationStepRow { RecomputationId = work.Id, Test = test, BeforeId = current.RatingId, At = at, Outcome = StepOutcome.Candidate };
        var flags = await context.Set<ChannelFlagRow>().AsNoTracking()
            .Where(row => row.PackageSha256 == current.PackageSha256 && row.Withdrawal == null).OrderBy(row => row.Id).ToListAsync(cancellation);
        var package = await RunFindings.Package(context, test, current.PackageSha256, cancellation);
        var problems = await context.Set<PackageRow>().Where(row => row.Sha256 == current.PackageSha256).Select(row => row.Problems).SingleAsync(cancellation);
        var run = RunComputer.Compute(rules, candidate, package, flags.ConvertAll(row => row.ToFlag()));
        var cause = new RunCause(work.By, at, $"Computed by method edition {work.MethodEdition} for comparison", work.Reason);
        step.After = RunResults.Rows(current.PackageSha256, StoredJson.Read<Problem[]>(problems), run, cause);
        step.After.Reduction!.Findings = await RunResults.RatedWith(context, test, current.PackageSha256, cancellation);
        context.Add(step.After);
        return step;
    }
}
