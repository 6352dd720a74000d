using Toepan.Api.Channels;
using Toepan.Api.Measures;
using Toepan.Api.Packages.Attachments;
using Toepan.Api.Programme;
using Toepan.Domain.Analysis;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Web.Pages.Programme;

/// <summary>Everything the page of one run shows. A part whose service refused is empty or null; the refusal stands in <see cref="Refusals"/>.</summary>
public sealed record TestRunView(
    TestRunDetail Detail, string ClassTitle, IReadOnlyList<Measure> Measures, StructureResult? Structure, IReadOnlyList<KeptFinding> Findings,
    Rating? Rating, Scheme Scheme, IReadOnlyList<ReductionSummary> Reductions, IReadOnlyList<FlagRecord> Flags, IReadOnlyList<ChannelIndexEntry> Channels,
    IReadOnlyList<CurveSet> Curves, IReadOnlyList<Film> Films, IReadOnlyList<string> Refusals)
{
    public string Test => Detail.Run.Test;

    /// <summary>The rating with its inputs by hash and its arithmetic; null where there is none.</summary>
    public Toepan.Api.Ratings.RatingEvidence? Evidence { get; init; }

    /// <summary>The limit that holds a region down when exceeded, in the measure's unit; null where the scheme names none for this dummy.</summary>
    public double? Limit(string code, DummyType dummy) =>
        Scheme.RegionsOf(dummy).SelectMany(region => region.Limits).FirstOrDefault(limit => limit.Measure == code)?.Limit;
}
