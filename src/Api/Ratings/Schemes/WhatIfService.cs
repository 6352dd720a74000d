using Microsoft.EntityFrameworkCore;
using Toepan.Api.Ratings.Recomputations;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Ratings;
using Toepan.Domain.Ratings.Differences;

namespace Toepan.Api.Ratings.Schemes;

/// <summary>What another scheme would make of the whole programme, before anybody adopts it. From stored measures alone: no package is reduced again.</summary>
public sealed class WhatIfService(IDbContextFactory<ProgrammeDb> contexts, IReleasedRuns released)
{
    /// <param name="key">Scheme to try.</param>
    /// <param name="vehicleClass">Only runs of this class; null = all.</param>
    public async Task<Outcome<WhatIf>> Get(Viewer viewer, string key, string? vehicleClass = null, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await SchemeStore.Find(context, key, cancellation) is not { } asked)
        {
            return Failure.NotFound("scheme", key);
        }

        var current = await SchemeStore.Current(context, cancellation);
        var codes = SchemeMeasures.Of(asked.Scheme).ToHashSet(StringComparer.Ordinal);
        var others = await Others(context, current, cancellation);
        codes.UnionWith(others.Values.SelectMany(SchemeMeasures.Of));
        var runs = (await RatedRuns.Load(context, codes, asked.Scheme.Procedure, cancellation)).Where(run => vehicleClass is null || run.Class == vehicleClass).ToList();
        var kept = await released.Among(context, [.. runs.Select(run => run.Test)], cancellation);
        var rated = runs.AsParallel().AsOrdered().WithCancellation(cancellation)
            .Select(run => (Run: run, After: Rater.Levels(asked.Scheme, run.Inputs))).ToList();
        return new WhatIf(
            key, asked.Scheme.Title, current.Scheme.Key, runs.Count,
            [.. rated.Where(pair => pair.Run.Overall != pair.After.Overall).Select(pair => Change(pair.Run, pair.After, kept.Contains(pair.Run.Test)))],
            [.. rated.GroupBy(pair => (pair.Run.Class, Before: pair.Run.Overall, After: pair.After.Overall))
                .Select(group => new WhatIfFlow(group.Key.Class, group.Key.Before, group.Key.After, group.Count()))
                .OrderBy(flow => flow.Class, StringComparer.Ordinal).ThenBy(flow => flow.Before ?? (ProtectionLevel)LevelWords.Steps).ThenBy(flow => flow.After ?? (ProtectionLevel)LevelWords.Steps)]);

        WhatIfChange Change(RatedRun run, Rating after, bool stays)
        {
            var before = Rater.Levels(others.GetValueOrDefault(run.Scheme) ?? current.Scheme, run.Inputs);
            var why = RatingDifference.Of(before with { Overall = run.Overall }, after, asked.Scheme)!;
            return new(run.Test, run.Vehicle, run.Class, run.Inputs.Valid, stays, run.Overall, after.Overall, why.Rule, why.Text);
        }
    }

    /// <summary>The schemes that current ratings are by, and the one that rates now.</summary>
    private static async Task<Dictionary<string, Scheme>> Others(ProgrammeDb context, StoredScheme current, CancellationToken cancellation)
    {
        var found = new Dictionary<string, Scheme>(StringComparer.Ordinal) { [current.Scheme.Key] = current.Scheme };
        foreach (var key in await context.Set<Tables.RatingRow>().Select(row => row.Scheme).Distinct().ToListAsync(cancellation))
        {
            if (await SchemeStore.Find(context, key, cancellation) is { } other)
            {
                found[key] = other.Scheme;
            }
        }

        return found;
    }
}
