using Toepan.Domain.Measures;
using Toepan.Domain.Programme;
using Toepan.Web.Components;
using Toepan.Web.Pages.Measures;

namespace Toepan.Web.Pages.Analysis;

/// <summary>Measures a question can be asked about: the catalogue's, and the rearward displacement of every point a procedure measures.</summary>
public static class MeasureChoices
{
    private static readonly IReadOnlyList<Choice> Known =
    [
        .. MeasureCatalogue.Entries.Where(entry => !entry.Code.Contains('<', StringComparison.Ordinal)).Select(entry => entry.Code)
            .Concat(ProcedureLibrary.All.SelectMany(procedure => procedure.Points).Distinct().Order(StringComparer.Ordinal).Select(point => $"structure.{point}.rearward"))
            .Distinct()
            .Select(code => new Choice(code, MeasureWords.Title(code))),
    ];

    /// <summary>The choices, with the code asked about where it is none of them.</summary>
    public static IReadOnlyList<Choice> With(string? code) =>
        string.IsNullOrEmpty(code) || Known.Any(choice => choice.Value == code) ? Known : [.. Known, new Choice(code, MeasureWords.Title(code))];
}
