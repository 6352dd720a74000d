using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>A vehicle to add or change; <c>vehicle</c> is needed to add one, <c>version</c> to change one.</summary>
public sealed record VehicleChangeJson(
    string? Vehicle, string? Make, string? Model, string? Class, int? ModelYearFrom, int? ModelYearTo, DateOnly? BuiltFrom, DateOnly? BuiltTo,
    decimal? KerbMassKg, string? RestraintEquipment, decimal? SalesSharePercent, DateOnly? PlannedDate, uint? Version)
{
    public VehicleFacts ToFacts() => new()
    {
        Class = Class ?? "", Make = Make, Model = Model, ModelYearFrom = ModelYearFrom, ModelYearTo = ModelYearTo, BuiltFrom = BuiltFrom,
        BuiltTo = BuiltTo, KerbMassKg = KerbMassKg, RestraintEquipment = RestraintEquipment, SalesSharePercent = SalesSharePercent, PlannedDate = PlannedDate,
    };
}

/// <summary>A decision to carry a rating over.</summary>
public sealed record NewCarryOverJson(string? From, string? Reason, string? Evidence);

/// <summary>A specimen to add or change; <c>version</c> is needed to change one.</summary>
public sealed record SpecimenChangeJson(
    string? Test, string? Serial, DateOnly? BuiltOn, decimal? MassKg, decimal? OdometerKm, string? Options, DateOnly? PurchasedOn,
    string? PurchasedFrom, string? PurchaseReference, DateOnly? ReceivedOn, uint? Version)
{
    public SpecimenFacts ToFacts() => new(
        Test, Serial, BuiltOn, MassKg, OdometerKm, Options, PurchasedOn, PurchasedFrom, PurchaseReference, ReceivedOn);
}

/// <summary>A specimen as the contract writes it; the serial is masked.</summary>
public sealed record SpecimenJson(
    long Id, string Vehicle, string? Test, string? Serial, DateOnly? BuiltOn, decimal? MassKg, decimal? OdometerKm, string? Options,
    DateOnly? PurchasedOn, string? PurchasedFrom, string? PurchaseReference, DateOnly? ReceivedOn, uint Version)
{
    public static SpecimenJson Of(Specimen one) => new(
        one.Id, one.Vehicle.Key, one.Facts.Test, one.Facts.Serial, one.Facts.BuiltOn, one.Facts.MassKg, one.Facts.OdometerKm, one.Facts.Options,
        one.Facts.PurchasedOn, one.Facts.PurchasedFrom, one.Facts.PurchaseReference, one.Facts.ReceivedOn, one.Version);
}

/// <summary>A run to plan.</summary>
public sealed record NewPlanJson(string? Test, string? Vehicle, string? Procedure, DateOnly Date, string? RepeatOf)
{
    public NewPlan ToPlan() => new(Test ?? "", Vehicle ?? "", Procedure ?? "", Date, string.IsNullOrEmpty(RepeatOf) ? null : RepeatOf);
}

/// <summary>A change of a planned run: exactly one of a new day, the signature under its preparation, the day it was made.</summary>
public sealed record PlanChangeJson(DateOnly? Date, bool? Prepared, DateOnly? RanOn, uint Version);

/// <summary>A planned run as the contract writes it.</summary>
public sealed record PlannedRunJson(
    string Test, string Vehicle, string Procedure, int ProcedureEdition, DateOnly Date, string? RepeatOf, DateOnly? RanOn, string? PreparedBy,
    DateTimeOffset? PreparedAt, string State, DateTimeOffset Since, bool PackageStored, uint Version)
{
    public static PlannedRunJson Of(PlannedRun plan) => new(
        plan.Test, plan.Vehicle.Key, plan.Procedure, plan.ProcedureEdition, plan.PlannedDate, plan.RepeatOf, plan.RanOn, plan.PreparedBy,
        plan.PreparedAt, plan.State, plan.Since, plan.PackageStored, plan.Version);
}

/// <summary>Preparation items to record by key.</summary>
public sealed record PreparationChangeJson(IReadOnlyDictionary<string, string>? Items, long Version);

/// <summary>A decision about a repeat.</summary>
public sealed record NewRepeatDecisionJson(RepeatTrigger Trigger, RepeatChoice Choice, string? Evidence, string? Options, bool MeasuresSeen)
{
    public NewRepeatDecision ToDecision() => new(Trigger, Choice, Evidence ?? "", Options ?? "", MeasuresSeen);
}
