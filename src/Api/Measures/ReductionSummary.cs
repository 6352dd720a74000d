using Toepan.Domain.Measures;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Measures;

/// <summary>One reduction of a run: who, when, why, by what, and what it came to.</summary>
/// <param name="Id">Number of the reduction.</param>
/// <param name="PackageSha256">Package it was computed from.</param>
/// <param name="MethodEdition">Method edition.</param>
/// <param name="ProcedureEdition">Procedure with edition.</param>
/// <param name="Runtime">Runtime that computed it.</param>
/// <param name="Commit">Commit of the program that computed it.</param>
/// <param name="At">When.</param>
/// <param name="By">Who caused it.</param>
/// <param name="What">Upload, replacement or flag, in a sentence.</param>
/// <param name="Why">The reason given, or null.</param>
/// <param name="Flags">Channel flags it was computed under.</param>
/// <param name="Current">Whether it is the one shown.</param>
/// <param name="Valid">Whether the run was valid by it.</param>
/// <param name="Overall">Overall level of its first rating, or null.</param>
public sealed record ReductionSummary(
    long Id, string PackageSha256, string MethodEdition, string ProcedureEdition, string Runtime, string Commit, DateTimeOffset At, string By,
    string What, string? Why, IReadOnlyList<ChannelFlag> Flags, bool Current, bool Valid, ProtectionLevel? Overall);
