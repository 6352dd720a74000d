using Toepan.Domain.Packages;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings.Schemes;

/// <summary>An edition as a list shows it.</summary>
/// <param name="Key">Key with edition.</param>
/// <param name="Title">Title.</param>
/// <param name="Default">Whether it rates new uploads.</param>
/// <param name="Procedure">Procedure whose runs it rates.</param>
/// <param name="Runs">Runs whose current rating is by it.</param>
/// <param name="Ratings">Ratings ever made by it; with one it can no longer change.</param>
/// <param name="Sha256">SHA-256 of the document.</param>
/// <param name="At">When the document came.</param>
/// <param name="By">Who brought it.</param>
public sealed record SchemeSummary(
    string Key, string Title, bool Default, string Procedure, int Runs, int Ratings, string Sha256, DateTimeOffset At, string By)
{
    /// <summary>Whether it may still be replaced by another document.</summary>
    public bool Draft => Ratings == 0 && !Default;
}

/// <summary>An adoption.</summary>
public sealed record Adoption(string Key, string Sha256, string Reason, DateTimeOffset At, string By);

/// <summary>One edition with what its page shows.</summary>
/// <param name="Summary">As in the list.</param>
/// <param name="File">Name of the document.</param>
/// <param name="Scheme">The rules.</param>
/// <param name="Coherence">What was checked of the whole.</param>
/// <param name="Adoptions">Its adoptions, latest first.</param>
public sealed record SchemeDetail(
    SchemeSummary Summary, string File, Scheme Scheme, IReadOnlyList<CoherenceCheck> Coherence, IReadOnlyList<Adoption> Adoptions);

/// <summary>A scheme document byte for byte.</summary>
public sealed record SchemeFile(string Name, string MediaType, byte[] Bytes);

/// <summary>What bringing a scheme came to.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Created">Whether something was stored, or on a dry run would be.</param>
/// <param name="Replaces">SHA-256 of the draft it replaces, or null.</param>
/// <param name="Sha256">SHA-256 of the document.</param>
/// <param name="Problems">Problems; empty where it was taken.</param>
/// <param name="Coherence">What was checked of the whole.</param>
/// <param name="DryRun">Whether nothing was to be stored.</param>
public sealed record SchemeUpload(
    string Key, bool Created, string? Replaces, string Sha256, IReadOnlyList<Problem> Problems, IReadOnlyList<CoherenceCheck> Coherence, bool DryRun);
