using System.Globalization;
using Toepan.Domain.Measures;

namespace Toepan.Web.Pages.Channels;

/// <summary>Decisions about channels in words.</summary>
public static class FlagWords
{
    public static string Decision(ChannelFlag flag) => flag.Kind switch
    {
        ChannelFlagKind.Polarity => "polarity turned",
        ChannelFlagKind.Scale => string.Create(CultureInfo.InvariantCulture, $"scaled by {flag.Factor:G6}"),
        _ => flag.FromS is { } from ? string.Create(CultureInfo.InvariantCulture, $"unfit from {from * 1000:0.#} ms on") : "unfit",
    };
}
