namespace Toepan.Api.Channels;

/// <summary>What a request for samples may ask.</summary>
internal static class SampleQueryLimits
{
    /// <summary>The refusal with value and limits, or null.</summary>
    public static Failure? Check(SampleQuery query)
    {
        if (query.Cfc is { } cfc && !SampleQuery.Classes.Contains(cfc))
        {
            return Failure.BadRequest($"cfc is {cfc}; it is one of {string.Join(", ", SampleQuery.Classes)}, or left out for the channel as recorded.");
        }

        if (query.Points is { } points and (< SampleQuery.LeastPoints or > SampleQuery.MostPoints))
        {
            return Failure.BadRequest($"points is {points}; it is {SampleQuery.LeastPoints} to {SampleQuery.MostPoints}.");
        }

        return CheckTimes(query.FromS, query.ToS);
    }

    private static Failure? CheckTimes(double? from, double? to)
    {
        if ((from is { } start && !double.IsFinite(start)) || (to is { } end && !double.IsFinite(end)))
        {
            return Failure.BadRequest(FormattableString.Invariant($"from is {from}, to is {to}; both are finite times in s."));
        }

        return from > to ? Failure.BadRequest(FormattableString.Invariant($"from is {from} s, which is after to, {to} s.")) : null;
    }
}
