using Toepan.Api.Analysis.Classes;
using Toepan.Domain.Ratings;
using Toepan.Web.Pages.Measures;

namespace Toepan.Web.Pages.Analysis;

/// <summary>Rows of a comparison in words.</summary>
public static class ClassWords
{
    private const string CapPrefix = "cap.";

    /// <summary>"low protection: chest deflection", "very low protection: fire", "not rated".</summary>
    public static string Level(ComparisonRow row) => row.Level is not { } level
        ? "not rated"
        : row.Deciding is { } deciding ? $"{level.Word()} protection: {Decided(deciding)}" : $"{level.Word()} protection";

    private static string Decided(DecidingMeasure deciding) => deciding.Code is { } code
        ? Lower(MeasureWords.Title(code))
        : deciding.Rule!.StartsWith(CapPrefix, StringComparison.Ordinal) ? deciding.Rule[CapPrefix.Length..].Split('.')[0].Replace('-', ' ') : deciding.Rule;

    private static string Lower(string title) => title.Length > 1 && char.IsUpper(title[1]) ? title : char.ToLowerInvariant(title[0]) + title[1..];
}
