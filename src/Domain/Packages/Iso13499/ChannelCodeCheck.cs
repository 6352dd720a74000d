namespace Toepan.Domain.Packages.Iso13499;

/// <summary>Holds a channel code against the code tables. Unknown codes are kept and told; only impossible ones bar the channel from use.</summary>
internal static class ChannelCodeCheck
{
    /// <summary>Why a channel of this code cannot be used, or null.</summary>
    public static string? Check(string code, int? line, Place place, ProblemList problems)
    {
        place = place.At(line);
        if (code.Length == 0)
        {
            return "it has no code";
        }

        if (code.Length != ChannelCodeTables.CodeLength)
        {
            problems.Error(ProblemCodes.CodeLength, $"The channel code {ProblemList.Show(code)} has {code.Length} characters; {ChannelCodeTables.CodeLength} are needed. No measure uses the channel.", place, code, "16");
            return $"its code has {code.Length} characters, not {ChannelCodeTables.CodeLength}";
        }

        if (!code.All(c => char.IsAsciiDigit(c) || char.IsAsciiLetterUpper(c) || c == '?'))
        {
            problems.Error(ProblemCodes.CodeCharacters, $"The channel code {ProblemList.Show(code)} holds characters other than letters, digits and ?. No measure uses the channel.", place, code);
            return "its code holds characters other than letters, digits and ?";
        }

        WarnOfUnknown(code, place, problems);
        return null;
    }

    private static void WarnOfUnknown(string code, Place place, ProblemList problems)
    {
        void Warn(bool known, string problem, string what, string value)
        {
            if (!known)
            {
                problems.Warn(problem, $"The channel code {code} has an unknown {what}, {value}; the channel is kept.", place, value);
            }
        }

        Warn(ChannelCodeTables.IsTestObject(code[0]), ProblemCodes.UnknownObject, "test object", code[..1]);
        Warn(ChannelCodeTables.IsPosition(code[1]), ProblemCodes.UnknownObject, "position", code[1..2]);
        Warn(ChannelCodeTables.IsMainLocation(code[2..6]), ProblemCodes.UnknownLocation, "main location", code[2..6]);
        Warn(ChannelCodeTables.IsDimension(code[12..14]), ProblemCodes.UnknownDimension, "physical dimension", code[12..14]);
        Warn(ChannelCodeTables.IsDirection(code[14]), ProblemCodes.UnknownDirection, "direction", code[14..15]);
        Warn(ChannelCodeTables.IsFilterLetter(code[15]), ProblemCodes.UnknownFilter, "filter letter", code[15..]);
    }
}
