using System.Globalization;

namespace Toepan.Domain.Sheets;

/// <summary>Figures as a language writes them: decimal sign, day, units, "fewer than". Independent of the machine's own culture data.</summary>
public static class SheetNumbers
{
    private const string Fewer = "number.fewer";

    /// <summary>The text of a figure.</summary>
    public static string Text(SheetFigure figure, SheetTexts texts) => figure.Kind switch
    {
        SheetFigureKind.Name => figure.Text!,
        SheetFigureKind.Date => Day(DateOnly.ParseExact(figure.Text!, "yyyy-MM-dd", CultureInfo.InvariantCulture), texts),
        SheetFigureKind.Risk => Count(figure, texts, texts["number.about"]),
        SheetFigureKind.RiskRange => Count(figure, texts, "{n}"),
        SheetFigureKind.Chance => Chance(figure, texts),
        _ => WithUnits(figure, texts),
    };

    /// <summary>A number with a language's decimal sign.</summary>
    public static string Number(double value, int decimals, SheetTexts texts) =>
        value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace(".", texts["number.decimal"], StringComparison.Ordinal);

    /// <summary>The number a way of writing gives, before "less than".</summary>
    public static double Rounded(double value, SheetShown shown) => Math.Round(Math.Abs(value) / shown.Per, shown.Decimals, MidpointRounding.AwayFromZero);

    private static string Day(DateOnly day, SheetTexts texts) => texts["date"]
        .Replace("{day}", day.Day.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
        .Replace("{month}", texts[string.Create(CultureInfo.InvariantCulture, $"month.{day.Month}")], StringComparison.Ordinal)
        .Replace("{year}", day.Year.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);

    private static string Count(SheetFigure figure, SheetTexts texts, string pattern)
    {
        var shown = figure.Shown[0];
        var count = Rounded(figure.Value!.Value, shown);
        return shown.Least is { } least && count < least ? Put(texts[Fewer], Number(least, 0, texts)) : Put(pattern, Number(count, shown.Decimals, texts));
    }

    // A chance is never said to be certain.
    private static string Chance(SheetFigure figure, SheetTexts texts)
    {
        var count = Rounded(figure.Value!.Value, figure.Shown[0]);
        return count < 1 ? Put(texts[Fewer], "1") : count > 99 ? Put(texts["number.more"], "99") : Number(count, 0, texts);
    }

    private static string WithUnits(SheetFigure figure, SheetTexts texts)
    {
        var first = WithUnit(figure.Value!.Value, figure.Shown[0], texts);
        return figure.Shown.Count == 1 || !texts.BothUnits
            ? first
            : texts["number.both"].Replace("{a}", first, StringComparison.Ordinal).Replace("{b}", WithUnit(figure.Value!.Value, figure.Shown[1], texts), StringComparison.Ordinal);
    }

    private static string WithUnit(double value, SheetShown shown, SheetTexts texts)
    {
        var number = Rounded(value, shown);
        if (shown.Least is { } least && number < least)
        {
            return Put(texts["number.less"], Joined(Number(least, shown.Decimals, texts), shown.Unit, texts));
        }

        var sign = value < 0 && number > 0 && !shown.Unit.Equals("cm", StringComparison.Ordinal) && !shown.Unit.Equals("in", StringComparison.Ordinal) ? "−" : "";
        return Joined(sign + Number(number, shown.Decimals, texts), shown.Unit, texts);
    }

    private static string Joined(string number, string unit, SheetTexts texts) =>
        unit.Length == 0 ? number : $"{number}\u00a0{(texts.Knows($"unit.{unit}") ? texts[$"unit.{unit}"] : unit)}";

    private static string Put(string pattern, string number) => pattern.Replace("{n}", number, StringComparison.Ordinal);
}
