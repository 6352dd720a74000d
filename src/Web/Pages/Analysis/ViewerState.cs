using System.Globalization;
using Microsoft.Extensions.Primitives;
using Toepan.Domain.Analysis.Traces;

namespace Toepan.Web.Pages.Analysis;

/// <summary>Everything the viewer shows, as its address says it; times in ms from contact.</summary>
/// <param name="Traces">Texts of the traces, blank ones left out.</param>
/// <param name="FromMs">Window from.</param>
/// <param name="ToMs">Window to.</param>
/// <param name="A">First cursor, or null.</param>
/// <param name="B">Second cursor, or null.</param>
/// <param name="Each">Whether each trace has a panel of its own.</param>
/// <param name="Film">Attachment number of the film beside it, or null.</param>
/// <param name="Run">Run searched in the picker.</param>
/// <param name="Find">Words searched in the picker.</param>
public sealed record ViewerState(
    IReadOnlyList<string> Traces, double FromMs, double ToMs, double? A, double? B, bool Each, string? Film, string Run, string Find)
{
    public const double UsualFromMs = 0;
    public const double UsualToMs = 200;
    private const double WidestMs = 60_000;

    public static ViewerState Read(IQueryCollection query)
    {
        var (from, to) = (Number(query["from"]) ?? UsualFromMs, Number(query["to"]) ?? UsualToMs);
        var usable = from < to && to - from <= WidestMs;
        return new ViewerState(
            [.. query["t"].OfType<string>().Select(text => text.Trim()).Where(text => text.Length > 0)], usable ? from : UsualFromMs, usable ? to : UsualToMs,
            Number(query["a"]), Number(query["b"]), query["panels"] == "each", query["film"].FirstOrDefault(text => !string.IsNullOrEmpty(text)),
            query["run"].ToString().Trim(), query["find"].ToString().Trim());
    }

    /// <summary>The address that shows this and nothing else.</summary>
    public string Address => "/viewer?" + string.Join('&', Parts().Select(part => $"{part.Name}={Uri.EscapeDataString(part.Value)}"));

    /// <summary>The window's samples as CSV.</summary>
    public string CsvAddress =>
        $"/api/v1/traces?{string.Join('&', Traces.Select(trace => $"t={Uri.EscapeDataString(trace)}"))}&from={N(FromMs / 1000)}&to={N(ToMs / 1000)}&format=csv";

    public ViewerState With(IEnumerable<string> traces) => this with { Traces = [.. traces] };

    public ViewerState Replaced(int index, string? trace) => With(Traces.SelectMany((text, i) => i != index ? [text] : trace is null ? Array.Empty<string>() : [trace]));

    /// <summary>What the page's buttons add: functions of picked traces, the same traces of another run; null where none was pressed.</summary>
    public ViewerState? Made(IQueryCollection query)
    {
        var picked = query["pick"].Select(text => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var i) && i < Traces.Count ? Traces[i] : null).OfType<string>()
            .Select(text => text.Split('~')[0]).ToList();
        var made = query["make"].ToString();
        if (TraceFunction.All.FirstOrDefault(function => function.Name == made) is { } function)
        {
            IEnumerable<string> added = picked.Count == 0 ? [] : function.MostArguments == 1 ? picked.Select(text => $"{made}({text})") : [$"{made}({string.Join(',', picked)})"];
            return With(Traces.Concat(added));
        }

        return made == "again" && query["again"].ToString().Trim() is { Length: > 0 } test ? With(Traces.Concat(Traces.Select(text => Of(text, test)).OfType<string>()).Distinct()) : null;
    }

    private static string? Of(string text, string test) =>
        TraceParser.Read(text).Trace is { } trace ? (trace with { Expression = trace.Expression.Replace(channel => channel with { Test = test.ToUpperInvariant() }) }).ToString() : null;

    private IEnumerable<(string Name, string Value)> Parts()
    {
        foreach (var trace in Traces)
        {
            yield return ("t", trace);
        }

        yield return ("from", N(FromMs));
        yield return ("to", N(ToMs));
        (string Name, string? Value)[] rest = [("a", N(A)), ("b", N(B)), ("panels", Each ? "each" : null), ("film", Film), ("run", Run), ("find", Find)];
        foreach (var (name, value) in rest.Where(part => !string.IsNullOrEmpty(part.Value)))
        {
            yield return (name, value!);
        }
    }

    private static double? Number(StringValues text) =>
        double.TryParse(text.ToString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;

    /// <summary>A time as the address writes it.</summary>
    public static string N(double? value) => value?.ToString("R", CultureInfo.InvariantCulture) ?? "";
}
