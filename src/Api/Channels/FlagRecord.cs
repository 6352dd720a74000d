using Toepan.Api.Measures;
using Toepan.Domain.Measures;

namespace Toepan.Api.Channels;

/// <summary>A decision to make about a channel.</summary>
/// <param name="Channel">Channel code.</param>
/// <param name="Kind">unfit, polarity or scale.</param>
/// <param name="FromS">Unfit from this time on, s; null = wholly. Only for unfit.</param>
/// <param name="Factor">Factor for scale; null otherwise.</param>
/// <param name="Reason">Why; required.</param>
public sealed record NewFlag(string Channel, ChannelFlagKind Kind, double? FromS, double? Factor, string Reason);

/// <summary>A decision made, and whether it still stands.</summary>
public sealed record FlagRecord(
    long Id, ChannelFlag Flag, string By, DateTimeOffset At, string? WithdrawnBy, DateTimeOffset? WithdrawnAt, string? WithdrawnReason)
{
    public bool Standing => WithdrawnAt is null;
}

/// <summary>A flag put or withdrawn, and the reduction that followed.</summary>
public sealed record FlagResult(FlagRecord Flag, ReductionSummary Reduction);
