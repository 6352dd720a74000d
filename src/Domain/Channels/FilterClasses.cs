using System.Globalization;
using System.Text.RegularExpressions;

namespace Toepan.Domain.Channels;

/// <summary>
/// What a channel's code letter and header say it was filtered to before we saw it. Letters: A 1000, B 600, C 180, D 60;
/// P (anti-alias only) and 0 are unfiltered (methods edition 1; code table of [iso13499] from memory).
/// </summary>
public static partial class FilterClasses
{
    /// <summary>The class a header text names: <c>1000</c>, <c>CFC 600</c>, <c>CFC_180</c>, or a code letter; null where it names none (0, NOVALUE, blank, other text).</summary>
    public static int? FromHeader(string? header)
    {
        var match = HeaderForm().Match(header ?? string.Empty);
        if (!match.Success)
        {
            return null;
        }

        var said = match.Groups["class"].Value;
        if (!char.IsAsciiDigit(said[0]))
        {
            return FromLetter(char.ToUpperInvariant(said[0]));
        }

        return int.TryParse(said, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0 ? number : null;
    }

    /// <summary>The class a code letter names; null for the unfiltered letters and for S and unknown ones.</summary>
    public static int? FromLetter(char letter) => letter switch
    {
        'A' => 1000,
        'B' => 600,
        'C' => 180,
        'D' => 60,
        _ => null,
    };

    /// <summary>Whether the letter itself decides: a class, or certainly unfiltered. S and unknown letters do not.</summary>
    public static bool Decides(char letter) => FromLetter(letter) is not null || letter is 'P' or '0';

    /// <summary>
    /// The class a channel was recorded with, null = unfiltered. Where letter and header disagree, the lower class; for S and
    /// unknown letters the header's, else unfiltered.
    /// </summary>
    public static int? Recorded(char letter, string? header)
    {
        var byLetter = FromLetter(letter);
        var byHeader = FromHeader(header);
        return byLetter is { } a && byHeader is { } b ? Math.Min(a, b) : byLetter ?? byHeader;
    }

    /// <summary>Whether letter and header name different things (a deciding letter against a header that names a class).</summary>
    public static bool Disagree(char letter, string? header) =>
        Decides(letter) && FromHeader(header) is { } byHeader && byHeader != FromLetter(letter);

    /// <summary>Sort key of "the unfiltered one, else the highest class": smaller is preferred.</summary>
    public static int Preference(int? recordedClass) => recordedClass is { } filtered ? -filtered : int.MinValue;

    [GeneratedRegex(@"^\s*(?:CFC[\s_:-]*)?(?<class>[0-9]{1,6}|[ABCD])(?:\.0*)?\s*(?:Hz)?\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex HeaderForm();
}
