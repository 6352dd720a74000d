using Npgsql;
using Toepan.Api.Analysis.Columns;
using Toepan.Api.Security;
using Toepan.Domain.Measures;
using Toepan.Domain.Programme;

namespace Toepan.Api.Analysis;

/// <summary>
/// Any measures of the programme as compact rows: what class comparison, explore and every export are made of.
/// <para>
/// Ask with a <see cref="MeasureQuestion"/> (classes, measures, seat, procedure, which runs). The answer has a row for each occupant of each run and each
/// summary result (<see cref="MeasuredRow.Kind"/>), rows by test code and seat, values in the order of <see cref="MeasureRows.Measures"/>. Statistics over
/// <see cref="MeasureRows.Column"/> count a measure of the vehicle once a run.
/// </para>
/// <para>
/// Values are always the current ones: what can change (vehicles, the current reduction of a run, withdrawn batches) is read with every question in one trip;
/// what cannot (rows of a reduction, rows of a batch) is read once and kept in memory, bounded.
/// </para>
/// </summary>
public sealed class ProgrammeMeasures
{
    /// <summary>Most codes in one question.</summary>
    public const int MostMeasures = 200;

    private readonly NpgsqlDataSource source;
    private readonly SummaryColumns summaries;
    private readonly ReducedRuns reduced;

    internal ProgrammeMeasures(NpgsqlDataSource source, SummaryColumns summaries, ReducedRuns reduced) =>
        (this.source, this.summaries, this.reduced) = (source, summaries, reduced);

    /// <summary>The rows a question asks for; no row is no failure.</summary>
    public async Task<Outcome<MeasureRows>> Load(Viewer viewer, MeasureQuestion question, CancellationToken cancellation = default)
    {
        if ((Access.ToRead(viewer) ?? Check(question)) is { } refusal)
        {
            return refusal;
        }

        var state = await CurrentState.Read(source, question, cancellation);
        var runs = Chosen(state, question.Runs);
        var measured = await reduced.Get([.. runs.Select(run => run.Reduction)], cancellation);
        var batches = await Batches(state, question.Runs, cancellation);
        var codes = question.Measures.Count > 0 ? [.. question.Measures.Distinct()] : EveryCode(measured.Values, batches);
        var rows = new List<MeasuredRow>();
        foreach (var run in runs)
        {
            AddRun(rows, run, measured[run.Reduction], state.Vehicles[run.Vehicle], codes, question.Seat);
        }

        foreach (var batch in batches)
        {
            AddBatch(rows, batch, await summaries.Columns(batch, codes, cancellation), state.Vehicles, question);
        }

        rows.Sort((a, b) => string.CompareOrdinal(a.Test, b.Test) is var order && order != 0 ? order : Nullable.Compare(a.Position, b.Position));
        return new MeasureRows(codes, [.. codes.Select(code => Unit(code, measured.Values))], rows);
    }

    private static Failure? Check(MeasureQuestion question)
    {
        if (!Seats.Words.Contains(question.Seat))
        {
            return Failure.BadRequest($"seat is '{question.Seat}'; it is one of {string.Join(", ", Seats.Words)}.");
        }

        if (question.Measures.Count > MostMeasures)
        {
            return Failure.BadRequest($"{question.Measures.Count} measures are asked for; at most {MostMeasures} are given at once.");
        }

        return question.Measures.FirstOrDefault(code => MeasureCatalogue.Find(code) is null) is { } unknown
            ? Failure.BadRequest($"measure is '{unknown}', which methods edition {MethodEdition.Current} does not have.")
            : null;
    }

    private static List<RunHead> Chosen(CurrentState state, RunChoice choice) => choice switch
    {
        RunChoice.Summary => [],
        RunChoice.All => [.. state.Runs],
        RunChoice.Rating => Rating(state),
        _ => [.. state.Runs.Where(run => run.Valid)],
    };

    private static List<RunHead> Rating(CurrentState state)
    {
        var rating = state.Runs.GroupBy(run => run.Vehicle)
            .Select(runs => RatingRuns.Of(runs.Select(run => new RatingRun(run.Test, run.Date, run.Valid, (int?)run.Overall))))
            .ToHashSet();
        return [.. state.Runs.Where(run => rating.Contains(run.Test))];
    }

    private async Task<List<SummaryBatch>> Batches(CurrentState state, RunChoice choice, CancellationToken cancellation)
    {
        var batches = new List<SummaryBatch>();
        if (choice is not (RunChoice.Rating or RunChoice.Measured))
        {
            foreach (var id in state.Batches)
            {
                batches.Add(await summaries.Batch(id, cancellation));
            }
        }

        return batches;
    }

    private static List<string> EveryCode(IEnumerable<ReducedRun> runs, List<SummaryBatch> batches) =>
    [
        .. runs.SelectMany(run => run.Units.Keys).Concat(batches.SelectMany(batch => batch.Codes)).Distinct()
            .OrderBy(MeasureCatalogue.OrderOf).ThenBy(code => code, StringComparer.Ordinal),
    ];

    private static string Unit(string code, IEnumerable<ReducedRun> runs) =>
        MeasureCatalogue.Find(code)?.Unit ?? runs.Select(run => run.Units.GetValueOrDefault(code)).FirstOrDefault(unit => unit is not null) ?? "";

    private static void AddRun(List<MeasuredRow> rows, RunHead run, ReducedRun values, VehicleHead vehicle, List<string> codes, string seat)
    {
        foreach (var occupant in Seats.Of(values.Occupants, seat))
        {
            rows.Add(new MeasuredRow
            {
                Test = run.Test, Kind = ResultKind.Run, Vehicle = vehicle.Name, KerbMassKg = vehicle.KerbMassKg,
                ModelYear = vehicle.ModelYear, TestMassKg = values.TestMassKg, Procedure = run.Procedure, Date = run.Date, Valid = run.Valid, Overall = run.Overall,
                Position = occupant.Position, Seat = occupant.Seat, Dummy = occupant.Dummy.ToString(), MethodEdition = values.MethodEdition, Source = run.Reduction,
                Values = codes.ConvertAll(code => values.At(code, occupant.Position)),
            });
        }
    }

    private static void AddBatch(
        List<MeasuredRow> rows, SummaryBatch batch, SummaryColumn?[] columns, IReadOnlyDictionary<string, VehicleHead> vehicles, MeasureQuestion question)
    {
        for (var at = 0; at < batch.Runs.Count; at++)
        {
            var run = batch.Runs[at];
            if ((question.Procedure is null || run.Procedure == question.Procedure) && vehicles.TryGetValue(run.Vehicle, out var vehicle))
            {
                AddSummary(rows, batch.Id, (run, at), columns, vehicle, question.Seat);
            }
        }
    }

    // The lowest position is the driver, as in a run that names no driver; a run without any position has its vehicle's measures alone.
    private static void AddSummary(
        List<MeasuredRow> rows, long batch, (SummaryRun Run, int At) summary, SummaryColumn?[] columns, VehicleHead vehicle, string seat)
    {
        var run = summary.Run;
        var (first, end) = seat switch
        {
            Seats.Driver => (0, Math.Min(1, run.Seats.Count)),
            Seats.Passenger => (1, run.Seats.Count),
            _ => (0, run.Seats.Count),
        };
        for (var place = first; place < end || (run.Seats.Count == 0 && place == 0 && seat != Seats.Passenger); place++)
        {
            var occupant = run.Seats.Count == 0 ? null : run.Seats[place];
            rows.Add(new MeasuredRow
            {
                Test = run.Test, Kind = ResultKind.Summary, Vehicle = vehicle.Name, KerbMassKg = vehicle.KerbMassKg,
                ModelYear = run.ModelYear ?? vehicle.ModelYear, TestMassKg = run.TestMassKg, Procedure = run.Procedure, Date = run.Date,
                Position = occupant?.Position, Seat = occupant is null ? null : place == 0 ? Seats.Driver : Seats.Passenger, Dummy = occupant?.Dummy, Source = batch,
                Values = Values(columns, summary.At, occupant is null ? null : run.FirstSeat + place),
            });
        }
    }

    private static double?[] Values(SummaryColumn?[] columns, int run, int? seat)
    {
        var values = new double?[columns.Length];
        for (var i = 0; i < columns.Length; i++)
        {
            values[i] = columns[i] is { } column && (column.OfVehicle || seat is not null) ? column.At(run, seat ?? 0) : null;
        }

        return values;
    }
}
