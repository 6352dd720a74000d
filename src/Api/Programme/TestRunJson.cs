using Toepan.Api.Measures;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Programme;

/// <summary>A run in a list, as the contract writes it.</summary>
public sealed record TestRunJson(
    string Test, string Vehicle, string? Make, string? Model, string Class, string Procedure, DateOnly Date, string? Laboratory, string? RepeatOf,
    bool Valid, ProtectionLevel? Overall, string? NotRated, string State, DateTimeOffset Since, IReadOnlyList<Occupant> Occupants,
    bool Accepted, IReadOnlyList<string> Concerns)
{
    public static TestRunJson Of(TestRunSummary run) => new(
        run.Test, run.Vehicle.Key, run.Vehicle.Make, run.Vehicle.Model, run.Vehicle.Class, run.Procedure, run.Date, run.Laboratory,
        run.RepeatOf, run.Valid, run.Overall, run.NotRated, run.State, run.Since, run.Occupants, run.Accepted, run.Concerns);
}

/// <summary>A run in full, as the contract writes it.</summary>
public sealed record TestRunDetailJson(
    string Test, string Vehicle, string? Make, string? Model, string Class, string Procedure, string ProcedureEdition, DateOnly Date,
    string? Laboratory, string? RepeatOf, IReadOnlyList<string> RepeatedBy, bool Valid, ProtectionLevel? Overall, string? NotRated, string State,
    DateTimeOffset Since, IReadOnlyList<Occupant> Occupants, IReadOnlyList<ConductVerdict> Conduct, ConductReadings Readings,
    IReadOnlyList<Problem> Problems, IReadOnlyList<BeliefJson> Channels, IReadOnlyList<CrossCheck> CrossChecks,
    IReadOnlyList<HeadContactJson> HeadContacts, PackageFacts Package, IReadOnlyList<HistoryEntry> History, bool Accepted,
    IReadOnlyList<string> Concerns)
{
    public static TestRunDetailJson Of(TestRunDetail detail) => new(
        detail.Run.Test, detail.Run.Vehicle.Key, detail.Run.Vehicle.Make, detail.Run.Vehicle.Model, detail.Run.Vehicle.Class,
        detail.Run.Procedure, detail.ProcedureEdition, detail.Run.Date, detail.Run.Laboratory, detail.Run.RepeatOf, detail.RepeatedBy,
        detail.Run.Valid, detail.Run.Overall, detail.Run.NotRated, detail.Run.State, detail.Run.Since, detail.Run.Occupants,
        detail.Conduct.Items, detail.Readings, detail.Problems, [.. detail.Channels.Select(BeliefJson.Of)], detail.CrossChecks,
        [.. detail.HeadContacts.Select(HeadContactJson.Of)], detail.Package, detail.History,
        detail.Run.Accepted, detail.Run.Concerns);
}

/// <summary>Whether one channel can be believed; times in s.</summary>
public sealed record BeliefJson(
    string Channel, string File, string? Unit, string? Unfit, double? UnfitFrom, int? RecordedClass, BiasJson? Bias, IReadOnlyList<Problem> Problems)
{
    public static BeliefJson Of(ChannelBelief belief) => new(
        belief.Channel, belief.File, belief.Unit, belief.Unfit, belief.UnfitFromS, belief.RecordedClass,
        belief.Bias is { } bias ? BiasJson.Of(bias) : null, belief.Problems);
}

/// <summary>A head contact by force balance; times in s, peak in N.</summary>
public sealed record HeadContactJson(int Position, double From, double To, double PeakN)
{
    public static HeadContactJson Of(HeadContact contact) => new(contact.Position, contact.FromS, contact.ToS, contact.PeakN);
}
