using System.Globalization;
using Microsoft.AspNetCore.Http;

namespace Toepan.Api.Analysis.Explore;

/// <summary>An address's query → the question, the same for page and route. Empty values count as left out.</summary>
public static class ExploreQuery
{
    /// <param name="usual">Question that what is left out is taken from.</param>
    public static Outcome<ExploreQuestion> Read(IQueryCollection query, ExploreQuestion usual)
    {
        var slips = new List<string>();
        var asked = query.ContainsKey("x");
        var question = usual with
        {
            X = Text(query, "x") ?? usual.X,
            Y = asked ? Text(query, "y") : usual.Y,
            View = Text(query, "view") ?? (asked && Text(query, "y") is null ? "distribution" : usual.View),
            Classes = [.. query["class"].OfType<string>().Where(key => key.Length > 0).Distinct()],
            Seat = Text(query, "seat") ?? usual.Seat,
            Procedure = Text(query, "procedure"),
            Runs = Text(query, "runs") ?? usual.Runs,
            Group = Text(query, "group") ?? usual.Group,
            Summaries = Text(query, "summaries") switch { null or "with" => true, "without" => false, var other => Slip(slips, "summaries", other, "with or without") },
            YearFrom = Year(query, "yearFrom", slips),
            YearTo = Year(query, "yearTo", slips),
            MassFromKg = Mass(query, "massFrom", slips),
            MassToKg = Mass(query, "massTo", slips),
        };
        return slips.Count > 0 ? Failure.BadRequest(string.Join(" ", slips)) : question.Check() is { } failure ? failure : question;
    }

    private static string? Text(IQueryCollection query, string name) => query[name].ToString() is { Length: > 0 } text ? text : null;

    private static int? Year(IQueryCollection query, string name, List<string> slips)
    {
        if (Text(query, name) is not { } text)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var year) && year is >= 1900 and <= 2200)
        {
            return year;
        }

        Slip(slips, name, text, "a year from 1900 to 2200");
        return null;
    }

    private static double? Mass(IQueryCollection query, string name, List<string> slips)
    {
        if (Text(query, name) is not { } text)
        {
            return null;
        }

        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var kilograms) && kilograms > 0)
        {
            return kilograms;
        }

        Slip(slips, name, text, "kilograms above zero");
        return null;
    }

    private static bool Slip(List<string> slips, string name, string value, string expected)
    {
        slips.Add($"{name} is '{value}'; it is {expected}.");
        return true;
    }
}
