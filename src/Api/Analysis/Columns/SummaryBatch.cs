namespace Toepan.Api.Analysis.Columns;

/// <summary>The runs of one batch of historic results, in its order; a run's place is its number − 1. Immutable, as the rows it was read from.</summary>
internal sealed record SummaryBatch(long Id, IReadOnlyList<string> Codes, IReadOnlyList<SummaryRun> Runs)
{
    private const int BytesARun = 400;

    public long Bytes => 256 + (Runs.Count * BytesARun);

    /// <summary>Seats of all runs together.</summary>
    public int Seats { get; } = Runs.Sum(run => run.Seats.Count);
}

/// <summary>One summary run; its seats by position.</summary>
/// <param name="FirstSeat">Index of its first seat among those of the batch.</param>
internal sealed record SummaryRun(
    string Test, string Vehicle, string Procedure, DateOnly? Date, int? ModelYear, double? TestMassKg, int FirstSeat, IReadOnlyList<SummarySeat> Seats);

internal sealed record SummarySeat(int Position, string? Dummy);

/// <summary>All values of one code in one batch; NaN = absent. Of the vehicle's own measures one value a run, else one a seat.</summary>
internal sealed record SummaryColumn(bool OfVehicle, double[] Values)
{
    public double? At(int run, int seat) => Values[OfVehicle ? run : seat] is var value && double.IsNaN(value) ? null : value;
}
