using Microsoft.EntityFrameworkCore;
using Toepan.Api.Channels.Tables;
using Toepan.Api.Packages;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Traces;
using Toepan.Domain.Channels;
using Toepan.Domain.Packages;

namespace Toepan.Api.Analysis.Traces;

/// <summary>A run that can be picked.</summary>
public sealed record PickedRun(string Test, string Vehicle);

/// <summary>A channel that can be picked.</summary>
public sealed record PickedChannel(string Test, string Code, string Words, string Unit, int? RecordedClass);

/// <summary>What a search found.</summary>
/// <param name="Runs">Matching runs, at most <see cref="TracePicker.MostRuns"/>.</param>
/// <param name="Channels">Matching channels of the first of them, at most <see cref="TracePicker.MostChannels"/>.</param>
/// <param name="Views">Ready-made views, where one run is meant.</param>
public sealed record Picked(IReadOnlyList<PickedRun> Runs, IReadOnlyList<PickedChannel> Channels, IReadOnlyList<DailyView> Views);

/// <summary>Finds channels by run (code, vehicle) and by words of their code or plain name.</summary>
public sealed class TracePicker(IDbContextFactory<ProgrammeDb> contexts)
{
    public const int MostRuns = 30;
    public const int MostChannels = 200;
    private const int RunsSearched = 10;

    /// <param name="viewer">Who asks.</param>
    /// <param name="run">Part of a test code or a vehicle's name; empty = any.</param>
    /// <param name="words">Words that must all stand in a channel's code or plain name; empty = every channel, where one run is meant.</param>
    public async Task<Outcome<Picked>> Find(Viewer viewer, string run, string words, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var runs = await Runs(context, run.Trim(), cancellation);
        var exact = runs.FirstOrDefault(found => found.Test.Equals(run.Trim(), StringComparison.OrdinalIgnoreCase)) ?? (runs is [var only] ? only : null);
        var searched = exact is not null ? [exact] : words.Length > 0 ? runs.Take(RunsSearched) : [];
        var channels = new List<PickedChannel>();
        IReadOnlyList<DailyView> views = [];
        foreach (var found in searched)
        {
            var current = await CurrentRun.Find(context, found.Test, cancellation);
            if (current is not null)
            {
                var all = await Channels(context, current, cancellation);
                channels.AddRange(all.Where(channel => Matches(channel, words)));
                views = exact is null ? [] : await Views(context, current, all, cancellation);
            }
        }

        return new Picked(runs, [.. channels.Take(MostChannels)], views);
    }

    private static async Task<List<PickedRun>> Runs(ProgrammeDb context, string text, CancellationToken cancellation)
    {
        var pattern = $"%{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("%", "\\%", StringComparison.Ordinal).Replace("_", "\\_", StringComparison.Ordinal)}%";
        var rows = await context.Set<TestRunRow>().AsNoTracking()
            .Where(row => EF.Functions.ILike(row.Test, pattern) || EF.Functions.ILike((row.Vehicle!.Make ?? "") + " " + (row.Vehicle.Model ?? ""), pattern))
            .OrderBy(row => row.Test).Take(MostRuns)
            .Select(row => new { row.Test, row.VehicleKey, row.Vehicle!.Make, row.Vehicle.Model }).ToListAsync(cancellation);
        return rows.ConvertAll(row => new PickedRun(row.Test, $"{row.Make} {row.Model}".Trim() is { Length: > 0 } title ? title : row.VehicleKey));
    }

    private static async Task<List<PickedChannel>> Channels(ProgrammeDb context, CurrentRun run, CancellationToken cancellation)
    {
        var rows = await context.Set<ChannelRow>().AsNoTracking().Where(row => row.PackageSha256 == run.PackageSha256)
            .OrderBy(row => row.Number).ThenBy(row => row.Ordinal)
            .Select(row => new { row.Code, row.Unit, row.HeaderFilterClass }).ToListAsync(cancellation);
        return [.. rows.DistinctBy(row => row.Code).Select(row => new PickedChannel(
            run.Test, row.Code, ChannelWords.Of(row.Code), row.Unit,
            ChannelCode.TryParse(row.Code) is { } code ? FilterClasses.Recorded(code.FilterLetter, row.HeaderFilterClass) : FilterClasses.FromHeader(row.HeaderFilterClass)))];
    }

    private static async Task<IReadOnlyList<DailyView>> Views(ProgrammeDb context, CurrentRun run, List<PickedChannel> channels, CancellationToken cancellation)
    {
        var document = StoredJson.Read<ProgrammeDocument>(await context.Set<PackageRow>()
            .Where(row => row.Sha256 == run.PackageSha256).Select(row => row.Programme).SingleAsync(cancellation));
        var listed = channels.Select((channel, i) => new ListedChannel(channel.Code, i, channel.RecordedClass)).ToList();
        return new DailyViews(run.Test, (double)document.Conduct.ImpactSpeedKmh.Average(), listed).All(document.Occupants);
    }

    private static bool Matches(PickedChannel channel, string words) => words
        .Split(' ', StringSplitOptions.RemoveEmptyEntries)
        .All(word => channel.Code.Contains(word, StringComparison.OrdinalIgnoreCase) || channel.Words.Contains(word, StringComparison.OrdinalIgnoreCase));
}
