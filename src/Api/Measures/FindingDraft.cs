using System.Globalization;
using Toepan.Domain.Packages;
using Toepan.Domain.Packages.Sidecars;
using Toepan.Domain.Programme;

namespace Toepan.Api.Measures;

/// <summary>What somebody writes down as a finding.</summary>
/// <param name="TimeMs">Film time, ms from contact; null = found by inspection.</param>
/// <param name="Camera">Camera, or null.</param>
/// <param name="Kind">One of <see cref="FindingWords.Kinds"/>.</param>
/// <param name="Region">One of <see cref="FindingWords.Regions"/>.</param>
/// <param name="Severity">note, concern or severe.</param>
/// <param name="Note">Free text.</param>
/// <param name="Position">Seat position it concerns; null = the driver.</param>
public sealed record FindingDraft(double? TimeMs, string? Camera, string Kind, string Region, FindingSeverity Severity, string? Note, int? Position)
{
    public const int LongestNote = 2_000;
    public const int LongestReason = 2_000;
    public const int LongestCamera = 100;

    /// <summary>Film and inspection times lie within an hour of contact (our own bound).</summary>
    public const double LargestTimeMs = 3_600_000;

    public Finding ToFinding() => new(TimeMs, Blank(Camera), Kind.Trim(), Region.Trim(), Severity, Blank(Note) ?? "", Position, 0);

    /// <summary>What speaks against it in a run with these occupants, or null.</summary>
    internal Failure? Check(IReadOnlyList<Occupant> occupants) => this switch
    {
        _ when !FindingWords.Kinds.Contains(Kind.Trim()) => NoneOf("kind", Kind, FindingWords.Kinds),
        _ when !FindingWords.Regions.Contains(Region.Trim()) => NoneOf("region", Region, FindingWords.Regions),
        { TimeMs: { } time } when !double.IsFinite(time) || Math.Abs(time) > LargestTimeMs => Failure.BadRequest(string.Create(
            CultureInfo.InvariantCulture, $"timeMs is {time}; it lies within {LargestTimeMs} ms of contact, or is left out for an inspection.")),
        { Position: { } position } when occupants.All(occupant => occupant.Position != position) => Failure.BadRequest(string.Create(
            CultureInfo.InvariantCulture, $"position is {position}; somebody sat at {string.Join(", ", occupants.Select(occupant => occupant.Position))}.")),
        _ => Text("The camera", Camera, LongestCamera) ?? Text("The note", Note, LongestNote),
    };

    private static Failure? Text(string what, string? text, int longest) => string.IsNullOrWhiteSpace(text) ? null : Texts.Check(what, text, longest);

    private static Failure NoneOf(string what, string word, IReadOnlySet<string> known) =>
        Failure.BadRequest($"{what} is '{word}'; it is one of {string.Join(", ", known.Order(StringComparer.Ordinal))}.");

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}

/// <summary>A finding added, corrected or withdrawn, and the reduction that followed.</summary>
public sealed record FindingResult(KeptFinding Finding, ReductionSummary Reduction);
