namespace Toepan.Domain.Channels;

/// <summary>
/// A 16-character channel code with <c>?</c> for "any character", e.g. <c>11HEAD0000??ACX?</c>. The dummy code and the filter
/// letter are usually left open.
/// </summary>
/// <param name="Text">16 upper-case characters.</param>
public readonly record struct ChannelPattern(string Text)
{
    /// <summary>A dummy channel at a seat position: test object 1, that seat, any dummy, any filter letter.</summary>
    /// <param name="position">Seat position 1–9.</param>
    /// <param name="location">Main and fine locations 1 and 2, 8 characters, e.g. <c>HEAD0000</c>.</param>
    /// <param name="dimensionAndDirection">Physical dimension and direction, 3 characters, e.g. <c>ACX</c>.</param>
    public static ChannelPattern Dummy(int position, string location, string dimensionAndDirection) =>
        new($"1{position}{location}??{dimensionAndDirection}?");

    /// <summary>A vehicle channel: test object 1, position 0.</summary>
    public static ChannelPattern Vehicle(string location, string dimensionAndDirection) =>
        new($"10{location}??{dimensionAndDirection}?");

    /// <summary>True where <paramref name="code"/> has 16 characters and each agrees.</summary>
    public bool Matches(string code)
    {
        if (code.Length != Text.Length)
        {
            return false;
        }

        for (var i = 0; i < code.Length; i++)
        {
            if (Text[i] != '?' && Text[i] != code[i])
            {
                return false;
            }
        }

        return true;
    }

    public override string ToString() => Text;
}
