using Toepan.Api.Measures;
using Toepan.Domain.Measures;

namespace Toepan.Api.Channels;

/// <summary>A decision to make about a channel.</summary>
/// <param name="Channel">Channel code.</param>
/// <param name="Kind">unfit, polarity or scale.</param>
/// <param name="From">Unfit from this time on, s; null = wholly.</param>
/// <param name="Factor">Factor for scale.</param>
/// <param name="Reason">Why.</param>
public sealed record NewFlagJson(string? Channel, string? Kind, double? From, double? Factor, string? Reason);

/// <summary>A flag as the contract writes it.</summary>
public sealed record FlagJson(
    long Id, string Channel, ChannelFlagKind Kind, double? From, double? Factor, string Reason, string By, DateTimeOffset At,
    bool Standing, string? WithdrawnBy, DateTimeOffset? WithdrawnAt, string? WithdrawnReason)
{
    public static FlagJson Of(FlagRecord record) => new(
        record.Id, record.Flag.Channel, record.Flag.Kind, record.Flag.FromS, record.Flag.Factor, record.Flag.Reason, record.By, record.At,
        record.Standing, record.WithdrawnBy, record.WithdrawnAt, record.WithdrawnReason);
}

/// <summary>A flag put or withdrawn, and the reduction that followed.</summary>
public sealed record FlagResultJson(FlagJson Flag, ReductionSummary Reduction)
{
    public static FlagResultJson Of(FlagResult result) => new(FlagJson.Of(result.Flag), result.Reduction);
}

/// <summary>Why a flag is withdrawn.</summary>
public sealed record WithdrawalJson(string? Reason);
