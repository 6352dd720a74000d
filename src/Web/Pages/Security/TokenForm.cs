using System.Globalization;

namespace Toepan.Web.Pages.Security;

/// <summary>The day a token ends, as a form sends it: through the end of that day, UTC.</summary>
internal static class TokenForm
{
    /// <summary>True where it is empty or a day; the end is null where it is empty.</summary>
    public static bool TryEnd(string text, out DateTimeOffset? end)
    {
        end = null;
        if (text.Length == 0)
        {
            return true;
        }

        if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) || day == DateOnly.MaxValue)
        {
            return false;
        }

        end = new DateTimeOffset(day.AddDays(1).ToDateTime(TimeOnly.MinValue), TimeSpan.Zero);
        return true;
    }
}
