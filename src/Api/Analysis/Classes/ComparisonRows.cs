using Toepan.Domain.Analysis;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis.Classes;

/// <summary>What is known of a run beside its values.</summary>
internal sealed record RunStanding(ProtectionLevel? Level, DecidingMeasure? Deciding);

/// <summary>Orders the rows and gives places to those that compare.</summary>
internal static class ComparisonRows
{
    /// <summary>
    /// Sorted by the measure, absent values last, else by test code. Places are given by the measure sorted by, to the rows that compare freely: with the
    /// vehicle picked out where one is; else to all, provided that the heaviest is at most 1.10 times the lightest and every mass is known.
    /// </summary>
    public static (IReadOnlyList<ComparisonRow> Rows, bool Ranked, double? MassRatio) Of(
        ClassMeasures table, ClassComparisonQuery query, IReadOnlyDictionary<string, RunStanding> standings)
    {
        var column = query.Sort is null ? -1 : table.Measures.ToList().IndexOf(query.Sort);
        var masses = table.Rows.Select(row => row.MassKg).ToList();
        var known = masses.Where(mass => mass is > 0).ToList();
        double? ratio = known.Count < 2 ? null : known.Max() / known.Min();
        var picked = query.Pick is null ? null : table.Rows.FirstOrDefault(row => row.Vehicle.Key == query.Pick);
        var reference = picked?.MassKg;
        var alike = known.Count == masses.Count ? MassComparison.Of(known.Max(), known.Min()) : MassStanding.Unknown;
        List<ComparisonRow> rows =
        [
            .. table.Rows.Select((row, i) => new ComparisonRow(
                row, masses[i], standings.GetValueOrDefault(row.Test)?.Level, standings.GetValueOrDefault(row.Test)?.Deciding,
                picked is null ? alike : row.Vehicle.Key == query.Pick ? MassStanding.Comparable : MassComparison.Of(reference, masses[i]), null)),
        ];
        rows = column < 0 ? [.. rows.OrderBy(row => row.Row.Test, StringComparer.Ordinal)] : Sorted(rows, column, query.Descending);
        var ranked = column >= 0 && rows.Exists(row => row.Standing == MassStanding.Comparable && row.Row.Values[column] is not null);
        return (ranked ? Placed(rows, column) : rows, ranked, ratio);
    }

    private static List<ComparisonRow> Sorted(List<ComparisonRow> rows, int column, bool descending)
    {
        var known = rows.OrderBy(row => row.Row.Values[column] is null);
        var sorted = descending ? known.ThenByDescending(row => row.Row.Values[column]) : known.ThenBy(row => row.Row.Values[column]);
        return [.. sorted.ThenBy(row => row.Row.Test, StringComparer.Ordinal).ThenBy(row => row.Row.Position)];
    }

    private static List<ComparisonRow> Placed(List<ComparisonRow> rows, int column)
    {
        var (seen, place, last) = (0, 0, double.NaN);
        return rows.ConvertAll(row =>
        {
            if (row.Standing != MassStanding.Comparable || row.Row.Values[column] is not { } value)
            {
                return row;
            }

            seen++;
            (place, last) = value.Equals(last) ? (place, last) : (seen, value);
            return row with { Rank = place };
        });
    }
}
