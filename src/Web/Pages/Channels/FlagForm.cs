using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Toepan.Api.Channels;
using Toepan.Domain.Measures;

namespace Toepan.Web.Pages.Channels;

/// <summary>What the decision form sends; numbers as text, so that a slip is answered in words.</summary>
public sealed class FlagForm
{
    public string? Channel { get; set; }
    public ChannelFlagKind Kind { get; set; }
    public string? FromMs { get; set; }
    public string? Factor { get; set; }
    public string? Reason { get; set; }

    /// <summary>The decision, or a sentence on what is missing. Fields of another kind of decision are ignored.</summary>
    public bool TryRead([NotNullWhen(true)] out NewFlag? flag, out string? refusal)
    {
        double? from = null;
        double? factor = null;
        flag = null;
        refusal = this switch
        {
            _ when string.IsNullOrWhiteSpace(Channel) => "Choose the channel.",
            _ when string.IsNullOrWhiteSpace(Reason) => "Give the reason: a decision without one cannot be defended later.",
            { Kind: ChannelFlagKind.Unfit } when !Optional(FromMs, out from) => "The time must be a number of milliseconds.",
            { Kind: ChannelFlagKind.Scale } when !Optional(Factor, out factor) || factor is null or 0 => "The factor must be a number other than zero.",
            _ => null,
        };
        if (refusal is not null)
        {
            return false;
        }

        flag = new NewFlag(Channel!, Kind, from / 1000, factor, Reason!.Trim());
        return true;
    }

    private static bool Optional(string? text, out double? value)
    {
        value = null;
        if (string.IsNullOrWhiteSpace(text))
        {
            return true;
        }

        if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
        {
            return false;
        }

        value = number;
        return true;
    }
}
