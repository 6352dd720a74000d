using System.Globalization;

namespace Toepan.Domain.Analysis.Traces;

/// <summary>A trace, or what is wrong with its text and where.</summary>
/// <param name="Trace">The trace; null exactly when <paramref name="Error"/> is set.</param>
/// <param name="Error">One sentence with the place, counted from 1.</param>
public sealed record TraceReading(Trace? Trace, string? Error);

/// <summary>
/// Reads one trace:
/// <code>
/// trace      = expression [ "~" number ]                   number: shift, ms
/// expression = channel | name "(" expression { "," expression } [ "," number ] ")"
/// channel    = test "/" code [ "@" class ]                 class: 60, 180, 600, 1000 or raw
/// name       = one of TraceFunction.All
/// number     = [ "-" ] digits [ "." digits ] [ "e" [ "-" ] digits ]
/// </code>
/// Blanks between parts are passed over; codes and names may be written in either case. Nothing else is understood, and nothing is guessed.
/// </summary>
public sealed class TraceParser
{
    /// <summary>Longest text of a trace, characters.</summary>
    public const int LongestText = 1000;

    /// <summary>Deepest nesting of functions.</summary>
    public const int Deepest = 5;

    /// <summary>Largest shift, ms either way.</summary>
    public const double LargestShiftMs = 10_000;

    private static readonly int[] Classes = [60, 180, 600, 1000];
    private readonly string text;
    private int at;
    private string? error;

    private TraceParser(string text) => this.text = text;

    public static TraceReading Read(string text)
    {
        if (text.Length > LongestText)
        {
            return new(null, $"A trace of {text.Length} characters is longer than the {LongestText} allowed.");
        }

        var parser = new TraceParser(text);
        var trace = parser.Whole();
        return parser.error is { } error ? new(null, error) : new(trace, null);
    }

    private Trace? Whole()
    {
        var expression = Expression(0);
        var shift = expression is not null && Take('~') ? Number("a shift in ms") : 0;
        if (error is null && Math.Abs(shift!.Value) > LargestShiftMs)
        {
            Fail(string.Create(CultureInfo.InvariantCulture, $"a shift of at most {LargestShiftMs} ms"));
        }

        Blanks();
        if (error is null && at < text.Length)
        {
            Fail("the end");
        }

        return error is null ? new Trace(expression!, shift!.Value) : null;
    }

    private TraceExpression? Expression(int depth)
    {
        Blanks();
        var start = at;
        var word = Word();
        if (Take('('))
        {
            return Function(word, start, depth);
        }

        if (word.Length == 0 || !Take('/'))
        {
            at = word.Length == 0 ? start : at;
            return Fail("a channel written TEST/CODE or a function such as res(…)");
        }

        var codeAt = at;
        var code = Word().ToUpperInvariant();
        if (code.Length == 0)
        {
            at = codeAt;
            return Fail("a channel code");
        }

        var (filterClass, known) = Take('@') ? Class() : (null, true);
        return known ? new ChannelTrace(word.ToUpperInvariant(), code, filterClass) : null;
    }

    private FunctionTrace? Function(string name, int start, int depth)
    {
        if (TraceFunction.All.FirstOrDefault(f => f.Name.Equals(name, StringComparison.OrdinalIgnoreCase)) is not { } function)
        {
            at = start;
            Fail($"one of the functions {string.Join(", ", TraceFunction.All.Select(f => f.Name))}");
            return null;
        }

        if (depth >= Deepest)
        {
            Fail($"at most {Deepest} functions within one another");
            return null;
        }

        var arguments = new List<TraceExpression>();
        double? number = null;
        do
        {
            if (arguments.Count > 0 && function.Number is not null && StartsNumber())
            {
                number = Number("a number");
                break;
            }

            if (Expression(depth + 1) is not { } argument)
            {
                return null;
            }

            arguments.Add(argument);
        }
        while (Take(','));
        return Closed(function, arguments, number);
    }

    private FunctionTrace? Closed(TraceFunction function, List<TraceExpression> arguments, double? number)
    {
        if (error is not null)
        {
            return null;
        }

        if (!Take(')'))
        {
            Fail("',' or ')'");
        }
        else if (arguments.Count < function.LeastArguments || arguments.Count > function.MostArguments)
        {
            var wanted = function.LeastArguments == function.MostArguments ? $"{function.LeastArguments}" : $"{function.LeastArguments} to {function.MostArguments}";
            Fail($"{wanted} traces in {function.Name}(…), not {arguments.Count}");
        }
        else if (function.Number == true && number is null)
        {
            Fail($"a number after the trace in {function.Name}(…)");
        }

        return error is null ? new FunctionTrace(function, arguments, number) : null;
    }

    private (int? Class, bool Known) Class()
    {
        var start = at;
        var word = Word();
        if (word.Equals("raw", StringComparison.OrdinalIgnoreCase))
        {
            return (null, true);
        }

        if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var filterClass) && Classes.Contains(filterClass))
        {
            return (filterClass, true);
        }

        at = start;
        Fail($"a class ({string.Join(", ", Classes)} or raw)");
        return (null, false);
    }

    /// <summary>Whether a number, and not a test code, comes next: no slash or bracket follows its characters.</summary>
    private bool StartsNumber()
    {
        Blanks();
        var end = at;
        while (end < text.Length && text[end] is not (',' or ')' or '(' or '/'))
        {
            end++;
        }

        return end >= text.Length || text[end] is ',' or ')';
    }

    private double? Number(string what)
    {
        Blanks();
        var start = at;
        while (at < text.Length && (char.IsAsciiLetterOrDigit(text[at]) || text[at] is '.' or '-' or '+'))
        {
            at++;
        }

        const NumberStyles Form = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        if (double.TryParse(text.AsSpan(start, at - start), Form, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number))
        {
            return number;
        }

        at = start;
        Fail(what);
        return null;
    }

    private string Word()
    {
        Blanks();
        var start = at;
        while (at < text.Length && (char.IsAsciiLetterOrDigit(text[at]) || text[at] is '-' or '_' or '?' or '.'))
        {
            at++;
        }

        return text[start..at];
    }

    private bool Take(char wanted)
    {
        Blanks();
        if (error is not null || at >= text.Length || text[at] != wanted)
        {
            return false;
        }

        at++;
        return true;
    }

    private void Blanks()
    {
        while (at < text.Length && text[at] == ' ')
        {
            at++;
        }
    }

    private TraceExpression? Fail(string expected)
    {
        var found = at < text.Length ? $"'{text[at]}'" : "the end";
        error ??= $"'{text}': at character {at + 1} stands {found}, expected {expected}.";
        return null;
    }
}
