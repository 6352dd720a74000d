using Toepan.Api.Security;

namespace Toepan.Api.Channels;

/// <summary>What engineers decided about channels. Each decision makes a new reduction and rating; earlier ones stay.</summary>
public sealed class ChannelFlagService
{
    /// <summary>Every flag ever put on the run, withdrawn ones too, latest first.</summary>
    public Task<Outcome<IReadOnlyList<FlagRecord>>> List(Viewer viewer, string test, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    /// <summary>Puts a flag on a channel and reduces the run again. Engineers, managers and administrators.</summary>
    public Task<Outcome<FlagResult>> Add(Viewer viewer, string test, NewFlag flag, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    /// <summary>Withdraws a flag with a reason and reduces the run again.</summary>
    public Task<Outcome<FlagResult>> Withdraw(Viewer viewer, string test, long flag, string reason, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
