using Toepan.Api.Security;

namespace Toepan.Api.Channels;

/// <summary>The channels of a run: index and samples.</summary>
public sealed class ChannelService
{
    /// <summary>Every channel of the current package, by number.</summary>
    public Task<Outcome<IReadOnlyList<ChannelIndexEntry>>> Index(Viewer viewer, string test, CancellationToken cancellation = default) =>
        throw new NotImplementedException();

    /// <summary>Samples of one channel, prepared as measures get them (converted, flags applied, bias removed), filtered where asked.</summary>
    public Task<Outcome<ChannelSamples>> Samples(
        Viewer viewer, string test, string code, SampleQuery query, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
