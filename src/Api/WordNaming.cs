using System.Text;
using System.Text.Json;

namespace Toepan.Api;

/// <summary>Enum members as the contract writes them: <c>VeryLow</c> → <c>very low</c>, <c>NotRecorded</c> → <c>not recorded</c>.</summary>
public sealed class WordNaming : JsonNamingPolicy
{
    public static WordNaming Instance { get; } = new();

    public override string ConvertName(string name)
    {
        var words = new StringBuilder(name.Length + 4);
        for (var i = 0; i < name.Length; i++)
        {
            if (i > 0 && char.IsUpper(name[i]))
            {
                words.Append(' ');
            }

            words.Append(char.ToLowerInvariant(name[i]));
        }

        return words.ToString();
    }
}
