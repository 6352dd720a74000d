using System.Globalization;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>Numbers in sentences: rounded half away from zero, decimal point, with unit. For display only.</summary>
internal static class Figures
{
    private const int MostDecimals = 6;

    /// <summary>A value with its unit; probabilities in per cent.</summary>
    public static string Of(double value, string unit) => unit == "probability" ? Percent(value) : Text(value, Decimals(value, unit), unit);

    /// <summary>Two values that must be told apart: as many decimals as it takes.</summary>
    public static (string Value, string Bound) Apart(double value, double bound, string unit)
    {
        var decimals = Decimals(Math.Max(value, bound), unit);
        while (decimals < MostDecimals && value != bound && Number(value, decimals) == Number(bound, decimals))
        {
            decimals++;
        }

        return (Text(value, decimals, unit), Text(bound, Math.Max(decimals, NeededBy(bound)), unit));
    }

    /// <summary>A distance, in the decimals its value would have, and never shown as zero unless it is.</summary>
    public static string Distance(double distance, double value, string unit)
    {
        if (unit == "probability")
        {
            return Points(distance);
        }

        var decimals = Decimals(value, unit);
        while (decimals < MostDecimals && distance != 0 && double.Parse(Number(distance, decimals), CultureInfo.InvariantCulture) == 0)
        {
            decimals++;
        }

        return Text(distance, decimals, unit);
    }

    /// <summary>A share as a percentage.</summary>
    public static string Percent(double share) => $"{Number(share * 100, 1)} %";

    /// <summary>A difference of shares.</summary>
    public static string Points(double difference) => $"{Number(difference * 100, Math.Abs(difference) < 0.001 && difference != 0 ? 3 : 1)} percentage points";

    private static int Decimals(double value, string unit) => unit switch
    {
        "mm" or "g" => 1,
        "" => Math.Abs(value) >= 20 ? 0 : 2,
        _ => 2,
    };

    private static int NeededBy(double bound)
    {
        var decimals = 0;
        while (decimals < MostDecimals && Math.Round(bound, decimals, MidpointRounding.AwayFromZero) != bound)
        {
            decimals++;
        }

        return decimals;
    }

    private static string Text(double value, int decimals, string unit) => unit.Length == 0 ? Number(value, decimals) : $"{Number(value, decimals)} {unit}";

    private static string Number(double value, int decimals)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
