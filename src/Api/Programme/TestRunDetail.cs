using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>Everything the programme knows about one run but its measures, structure, findings and rating, which have services of their own.</summary>
/// <param name="Run">The run as lists show it.</param>
/// <param name="ProcedureEdition">Procedure with edition it was judged by.</param>
/// <param name="Readings">What was recorded of its conduct.</param>
/// <param name="Conduct">Verdicts.</param>
/// <param name="RepeatedBy">Test codes of runs that say they repeat this one.</param>
/// <param name="Problems">The reader's problems, then the reduction's.</param>
/// <param name="Channels">Which channels can be believed.</param>
/// <param name="CrossChecks">Values held against expectations.</param>
/// <param name="HeadContacts">Head contact by force balance.</param>
/// <param name="Package">The package as uploaded.</param>
/// <param name="History">What happened to the run, latest first.</param>
public sealed record TestRunDetail(
    TestRunSummary Run, string ProcedureEdition, ConductReadings Readings, ConductJudgement Conduct, IReadOnlyList<string> RepeatedBy,
    IReadOnlyList<Problem> Problems, IReadOnlyList<ChannelBelief> Channels, IReadOnlyList<CrossCheck> CrossChecks,
    IReadOnlyList<HeadContact> HeadContacts, PackageFacts Package, IReadOnlyList<HistoryEntry> History);

/// <summary>The stored package of a run.</summary>
/// <param name="Sha256">Lower-case hex SHA-256 over its bytes.</param>
/// <param name="Length">Bytes.</param>
/// <param name="UploadedAt">When it was committed.</param>
/// <param name="UploadedBy">Who uploaded it.</param>
/// <param name="Attachments">Photographs, films and documents it carries.</param>
public sealed record PackageFacts(
    string Sha256, long Length, DateTimeOffset UploadedAt, string UploadedBy, IReadOnlyList<Attachment> Attachments);

/// <summary>One thing that happened to a run.</summary>
/// <param name="At">When.</param>
/// <param name="Who">Who did it.</param>
/// <param name="What">A sentence: uploaded, replaced, flagged, reduced again, …</param>
/// <param name="Why">The reason given, or null.</param>
public sealed record HistoryEntry(DateTimeOffset At, string Who, string What, string? Why);
