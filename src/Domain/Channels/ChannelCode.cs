namespace Toepan.Domain.Channels;

/// <summary>
/// A 16-character channel code of ISO/TS 13499, taken apart: test object, position, main location, three fine locations (the
/// third names the dummy), physical dimension, direction, filter letter. Fields are cut by place; codes unknown to us are kept.
/// Source: [iso13499] (its code tables from memory).
/// </summary>
public sealed record ChannelCode
{
    /// <summary>Characters in a well-formed code.</summary>
    public const int Length = 16;

    private ChannelCode(string text) => Text = text;

    /// <summary>All 16 characters, upper case.</summary>
    public string Text { get; }

    public char TestObject => Text[0];
    public char Position => Text[1];
    public string MainLocation => Text[2..6];
    public string FineLocation1 => Text[6..8];
    public string FineLocation2 => Text[8..10];
    public string Dummy => Text[10..12];

    /// <summary>Physical dimension, e.g. <c>AC</c>, <c>FO</c>.</summary>
    public string Dimension => Text[12..14];

    /// <summary>X, Y, Z, R (resultant) or 0.</summary>
    public char Direction => Text[14];

    public char FilterLetter => Text[15];

    /// <summary>The code without its filter letter: equal for several filterings of one transducer.</summary>
    public string Transducer => Text[..15];

    /// <summary>The parsed code, or null where the text has not 16 letters, digits or <c>?</c>.</summary>
    public static ChannelCode? TryParse(string? text)
    {
        var code = text?.Trim().ToUpperInvariant();
        return code is { Length: Length } && code.All(c => char.IsAsciiLetterOrDigit(c) || c == '?') ? new ChannelCode(code) : null;
    }

    public override string ToString() => Text;
}
