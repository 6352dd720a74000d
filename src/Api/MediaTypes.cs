using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;

namespace Toepan.Api;

/// <summary>Which of the forms a route can give the request wants.</summary>
internal static class MediaTypes
{
    public const string Json = "application/json";
    public const string Csv = "text/csv";
    public const string Parquet = "application/vnd.apache.parquet";
    public const string Spreadsheet = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    private static readonly Dictionary<string, string> Names = new(StringComparer.Ordinal) { ["parquet"] = Parquet, ["xlsx"] = Spreadsheet };

    /// <summary>The form that <c>?format=</c> names by its last part, or by parquet or xlsx (a link cannot set Accept), else the offered form with the highest quality in Accept, the first of equals; the first where there is no Accept; null where none is wanted.</summary>
    public static string? Choose(HttpRequest request, params ReadOnlySpan<string> offered)
    {
        foreach (var offer in offered)
        {
            if (Names.GetValueOrDefault(request.Query["format"].ToString()) == offer || request.Query["format"] == offer[(offer.IndexOf('/', StringComparison.Ordinal) + 1)..])
            {
                return offer;
            }
        }

        var accept = request.GetTypedHeaders().Accept;
        if (accept.Count == 0)
        {
            return offered[0];
        }

        var (best, bestQuality) = ((string?)null, 0.0);
        foreach (var offer in offered)
        {
            var quality = Quality(accept, offer);
            if (quality > bestQuality)
            {
                (best, bestQuality) = (offer, quality);
            }
        }

        return best;
    }

    public static ProblemHttpResult NotAcceptable(params ReadOnlySpan<string> offered) => TypedResults.Problem(
        $"This route answers {string.Join(" or ", offered!)}.", statusCode: StatusCodes.Status406NotAcceptable, title: "Not acceptable");

    // The most specific range that covers the offer decides (RFC 9110, 12.5.1).
    private static double Quality(IList<MediaTypeHeaderValue> accept, string offer)
    {
        var type = new MediaTypeHeaderValue(offer);
        var range = accept.Where(type.IsSubsetOf)
            .OrderBy(candidate => candidate.MatchesAllTypes ? 2 : candidate.MatchesAllSubTypes ? 1 : 0)
            .FirstOrDefault();
        return range is null ? 0 : range.Quality ?? 1;
    }
}
